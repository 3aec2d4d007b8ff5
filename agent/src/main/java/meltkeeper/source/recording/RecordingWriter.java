package meltkeeper.source.recording;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.zip.GZIPOutputStream;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.recording.RecordingLine;
import meltkeeper.source.Inlet;

/**
 * Writes what is received to a file, compressed when its name ends in {@code .gz}. What was flushed
 * can be read even when the process dies. Safe for use by several threads.
 */
public final class RecordingWriter implements Inlet, AutoCloseable {

  private final Writer out;
  private long lines;

  /**
   * Begins a new file.
   *
   * @throws IOException when it exists already, or cannot be written
   */
  public RecordingWriter(Path file) throws IOException {
    var bytes = Files.newOutputStream(file, StandardOpenOption.CREATE_NEW);
    this.out =
        new BufferedWriter(
            new OutputStreamWriter(
                file.toString().endsWith(".gz")
                    ? new GZIPOutputStream(bytes, 1 << 13, true)
                    : bytes,
                StandardCharsets.UTF_8));
  }

  @Override
  public synchronized void accept(Received received) {
    try {
      out.write(RecordingLine.print(received));
      out.write('\n');
      lines++;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Hands everything to the disk. */
  public synchronized void flush() throws IOException {
    out.flush();
  }

  /** Lines written so far. */
  public synchronized long lines() {
    return lines;
  }

  @Override
  public synchronized void close() throws IOException {
    out.close();
  }
}
