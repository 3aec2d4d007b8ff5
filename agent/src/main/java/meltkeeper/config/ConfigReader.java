package meltkeeper.config;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import meltkeeper.protocol.Fault;

/**
 * Reads the configuration. Never throws for what a file holds or fails to hold; all faults of a
 * file are told at once. A relative path in the file counts from the file's own folder.
 */
public final class ConfigReader {

  private ConfigReader() {}

  /** The configuration in a file. */
  public static Result read(Path file) {
    try {
      if (!Files.exists(file)) {
        return missing(file);
      }
      if (Files.size(file) > 4L * Document.MAX_LENGTH) {
        return faulty(
            new Fault(
                file.toString(),
                "",
                Files.size(file) + " bytes",
                "at most " + Document.MAX_LENGTH + " characters",
                "name a configuration, not another file"));
      }
      return decoded(file, Files.readAllBytes(file));
    } catch (IOException e) {
      return faulty(
          new Fault(
              file.toString(),
              "",
              e.toString(),
              "a file that can be read",
              "let the user that runs Meltkeeper read it"));
    }
  }

  private static Result missing(Path file) {
    return faulty(
        new Fault(
            file.toString(),
            "--config",
            "no file",
            "a configuration file",
            "looked for " + file.toAbsolutePath().normalize()));
  }

  private static Result decoded(Path file, byte[] bytes) {
    try {
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      return read(file.toString(), text);
    } catch (CharacterCodingException e) {
      return faulty(
          new Fault(
              file.toString(), "", "bytes that are no text", "text in UTF-8", "save it as UTF-8"));
    }
  }

  /**
   * The configuration in a text.
   *
   * @param fileName as faults show it; relative paths count from its folder
   */
  public static Result read(String fileName, String text) {
    Faults faults = new Faults(fileName);
    Path folder = Optional.ofNullable(Path.of(fileName).toAbsolutePath().getParent()).orElseThrow();
    Optional<Settings> settings =
        Document.compose(text, faults).map(file -> ShopReader.read(file, folder));
    List<Fault> told = faults.inOrder();
    return settings.isPresent() && told.isEmpty()
        ? new Result.Valid(settings.get())
        : new Result.Faulty(told);
  }

  private static Result faulty(Fault fault) {
    return new Result.Faulty(List.of(fault));
  }
}
