package meltkeeper.protocol.gcode;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Rejected.Reason;

/**
 * Makes whole lines of bytes that arrive in chunks of any size.
 *
 * <p>A line ends with CR, LF or both; empty lines are not told. Control bytes other than the tab
 * are noise and are left out. A line over the limit is told once as {@link Reason#TOO_LONG}, and
 * the rest of it is skipped. Never throws for any bytes. Not safe for use by several threads.
 */
public final class LineSplitter {

  /** The limit unless another is given, in bytes. */
  public static final int DEFAULT_LIMIT = 1024;

  private static final int SHOWN = 60;

  private final byte[] pending;
  private int length;
  private boolean skipping;

  /** A splitter with the default limit. */
  public LineSplitter() {
    this(DEFAULT_LIMIT);
  }

  /**
   * A splitter with a limit of its own.
   *
   * @param limit the longest line that is told, in bytes, its end not counted; at least 1
   */
  public LineSplitter(int limit) {
    if (limit < 1) {
      throw new IllegalArgumentException(limit + " is not a limit for a line; allowed: 1 or more");
    }
    this.pending = new byte[limit];
  }

  /** Takes all the bytes of one chunk. */
  public void feed(byte[] chunk, Lines lines) {
    feed(chunk, 0, chunk.length, lines);
  }

  /**
   * Takes the bytes of one chunk.
   *
   * @param from index of the first byte
   * @param to index after the last byte
   */
  public void feed(byte[] chunk, int from, int to, Lines lines) {
    for (int i = from; i < to; i++) {
      byte b = chunk[i];
      if (b == '\n' || b == '\r') {
        endLine(lines);
      } else if (!skipping && !isNoise(b)) {
        keep(b, lines);
      }
    }
  }

  /**
   * Forgets a line that has begun, because its end will not come: the wire was unplugged. It is
   * told as {@link Reason#TORN_LINE}.
   */
  public void breakOff(Lines lines) {
    if (length > 0) {
      lines.rejected(new Rejected(Reason.TORN_LINE, "the wire broke after \"" + shown() + "\""));
    }
    length = 0;
    skipping = false;
  }

  private void endLine(Lines lines) {
    if (length > 0) {
      lines.line(Payload.of(Arrays.copyOf(pending, length)));
    }
    length = 0;
    skipping = false;
  }

  private void keep(byte b, Lines lines) {
    if (length == pending.length) {
      lines.rejected(
          new Rejected(
              Reason.TOO_LONG,
              "a line longer than " + pending.length + " bytes begins \"" + shown() + "\""));
      length = 0;
      skipping = true;
    } else {
      pending[length++] = b;
    }
  }

  private String shown() {
    return new String(pending, 0, Math.min(length, SHOWN), StandardCharsets.UTF_8);
  }

  private static boolean isNoise(byte b) {
    return (b >= 0 && b < ' ' && b != '\t') || b == 0x7f;
  }

  /** Takes what a splitter finds, in order. */
  public interface Lines {

    /** A whole line, not empty, without its end. */
    void line(Payload line);

    /** What could not become a line. */
    void rejected(Rejected rejected);
  }
}
