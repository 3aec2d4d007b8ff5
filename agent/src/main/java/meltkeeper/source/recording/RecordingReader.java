package meltkeeper.source.recording;

import java.io.BufferedInputStream;
import java.io.BufferedReader;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.function.Consumer;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;

/** Reads a recording line by line; gzip is recognised by its first bytes. */
public final class RecordingReader {

  private RecordingReader() {}

  /**
   * Hands over each line that is not blank, in order. A compressed file that was torn while it was
   * written, by a power cut say, is read up to the tear; then one line is handed over that no parser
   * takes, so that the tear is counted.
   *
   * @return the SHA-256 of the text read, in hexadecimal: equal for equal recordings
   * @throws IOException when the file cannot be read
   */
  public static String read(Path file, Consumer<String> line) throws IOException {
    MessageDigest digest = sha256();
    try (BufferedReader text =
        new BufferedReader(
            new InputStreamReader(
                new DigestInputStream(open(file), digest), StandardCharsets.UTF_8))) {
      for (String next = text.readLine(); next != null; next = text.readLine()) {
        if (!next.isBlank()) {
          line.accept(next);
        }
      }
    } catch (EOFException | ZipException e) {
      line.accept("the compressed file ends in the middle");
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  private static InputStream open(Path file) throws IOException {
    BufferedInputStream bytes = new BufferedInputStream(Files.newInputStream(file), 1 << 16);
    bytes.mark(2);
    boolean compressed = bytes.read() == 0x1f && bytes.read() == 0x8b;
    bytes.reset();
    return compressed ? new GZIPInputStream(bytes, 1 << 16) : bytes;
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
