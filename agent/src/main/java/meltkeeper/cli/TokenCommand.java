package meltkeeper.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.channels.Channels;
import java.nio.channels.SeekableByteChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.Set;
import java.util.concurrent.Callable;
import meltkeeper.web.guard.TokenHash;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Makes the token that writes over the network need. */
@Command(
    name = "token",
    description = {
      "Makes a token for the page and the API, prints it once, and keeps its hash in a new file,",
      "for http.token-file."
    },
    footer = {"", "Example: meltkeeper token /etc/meltkeeper/token"})
final class TokenCommand implements Callable<Integer> {

  private static final FileAttribute<?> OWNERS_ALONE =
      PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"));

  @Parameters(paramLabel = "FILE", description = "The file to make; it must not be there yet.")
  private Path file = Path.of("");

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() {
    String token = TokenHash.freshToken(new SecureRandom());
    write(TokenHash.of(token).written() + "\n");
    PrintWriter out = spec.commandLine().getOut();
    out.println(token);
    spec.commandLine()
        .getErr()
        .println(
            "Keep it where you keep passwords: it is not kept here. "
                + file
                + " holds its hash only; name it as http.token-file.");
    return 0;
  }

  private void write(String text) {
    FileAttribute<?>[] attributes =
        FileSystems.getDefault().supportedFileAttributeViews().contains("posix")
            ? new FileAttribute<?>[] {OWNERS_ALONE}
            : new FileAttribute<?>[0];
    try (SeekableByteChannel channel =
            Files.newByteChannel(
                file, Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE), attributes);
        PrintWriter writer =
            new PrintWriter(Channels.newWriter(channel, StandardCharsets.US_ASCII))) {
      writer.print(text);
    } catch (FileAlreadyExistsException e) {
      throw new FailedException(
          file + " is there already; name another, or move it away to make a new token");
    } catch (IOException e) {
      throw new FailedException(file + " cannot be written: " + e.getMessage());
    }
  }
}
