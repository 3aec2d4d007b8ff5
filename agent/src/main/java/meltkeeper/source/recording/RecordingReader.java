package meltkeeper.source.recording;

import java.io.BufferedInputStream;
import java.io.BufferedReader;
import java.io.EOFException;
import java.io.FilterInputStream;
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
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Reads a recording line by line; gzip is recognised by its first bytes. */
public final class RecordingReader {

  private static final Logger LOG = LoggerFactory.getLogger(RecordingReader.class);

  private RecordingReader() {}

  /**
   * Hands over each line that is not blank, in order. A compressed file that was torn while it was
   * written, by a power cut say, is read up to the tear; then one line is handed over that no
   * parser takes, so that the tear is counted.
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
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  private static InputStream open(Path file) throws IOException {
    BufferedInputStream bytes = new BufferedInputStream(Files.newInputStream(file), 1 << 16);
    bytes.mark(2);
    boolean compressed = bytes.read() == 0x1f && bytes.read() == 0x8b;
    bytes.reset();
    return compressed ? new UpToTheTear(new GZIPInputStream(bytes, 1 << 16)) : bytes;
  }

  /** Ends where the compressed bytes make no sense any more, instead of failing there. */
  private static final class UpToTheTear extends FilterInputStream {

    UpToTheTear(InputStream in) {
      super(in);
    }

    @Override
    public int read() throws IOException {
      byte[] one = new byte[1];
      return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] into, int from, int length) throws IOException {
      try {
        return in.read(into, from, length);
      } catch (EOFException | ZipException e) {
        LOG.warn("a recording is torn: {}", e.getMessage());
        return -1;
      }
    }
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
