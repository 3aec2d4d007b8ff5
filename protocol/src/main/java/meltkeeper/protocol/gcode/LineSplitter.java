package meltkeeper.protocol.gcode;

import java.util.Arrays;
import java.util.function.Consumer;
import meltkeeper.protocol.Payload;

/**
 * Makes whole lines of bytes that arrive in chunks of any size.
 *
 * <p>A line ends with CR, LF or both; empty lines are not told. Control bytes other than the tab
 * are noise and are left out. A line over the limit is told cut to one byte more than the limit, so
 * that whoever reads it, now or in a recording, sees that it was too long; the rest of it is
 * skipped. Never throws for any bytes. Not safe for use by several threads.
 */
public final class LineSplitter {

  /** The longest line that a printer may send, in bytes, its end not counted. */
  public static final int LIMIT = 1024;

  private final byte[] pending;
  private int length;
  private long ended;
  private boolean afterReturn;

  /** A splitter with the limit that holds for printers. */
  public LineSplitter() {
    this(LIMIT);
  }

  LineSplitter(int limit) {
    this.pending = new byte[limit + 1];
  }

  /** Takes all the bytes of one chunk. */
  public void feed(byte[] chunk, Consumer<Payload> lines) {
    feed(chunk, 0, chunk.length, lines);
  }

  /**
   * Takes the bytes of one chunk.
   *
   * @param from index of the first byte
   * @param to index after the last byte
   * @param lines takes each whole line, without its end
   */
  public void feed(byte[] chunk, int from, int to, Consumer<Payload> lines) {
    for (int i = from; i < to; i++) {
      byte b = chunk[i];
      boolean belongsToReturn = b == '\n' && afterReturn;
      afterReturn = b == '\r';
      if (belongsToReturn) {
        continue;
      }
      if (b == '\n' || b == '\r') {
        endLine(lines);
      } else if (length < pending.length && !isNoise(b)) {
        pending[length++] = b;
      }
    }
  }

  /** The number of the line being told, from 1, empty ones counted; CR LF is one end. */
  public long lineNumber() {
    return ended + 1;
  }

  private void endLine(Consumer<Payload> lines) {
    if (length > 0) {
      lines.accept(Payload.of(Arrays.copyOf(pending, length)));
    }
    length = 0;
    ended++;
  }

  private static boolean isNoise(byte b) {
    return (b >= 0 && b < ' ' && b != '\t') || b == 0x7f;
  }
}
