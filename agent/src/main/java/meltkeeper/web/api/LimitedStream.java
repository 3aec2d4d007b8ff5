package meltkeeper.web.api;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/** A stream that is refused beyond {@value #MOST_BYTES} bytes: read through, never held. */
public final class LimitedStream extends FilterInputStream {

  /** 64 MiB. */
  public static final long MOST_BYTES = 64L << 20;

  private long read;

  public LimitedStream(InputStream in) {
    super(in);
  }

  /** What is said of one that is longer. */
  static final String TOO_LONG =
      "The body: found more than "
          + (MOST_BYTES >> 20)
          + " MiB; allowed: at most that; for a longer G-code file ask on the computer itself:"
          + " meltkeeper risk --printer NAME --gcode FILE";

  /** The stream goes on beyond the limit. */
  static final class TooLongException extends RuntimeException {
    TooLongException() {
      super(TOO_LONG);
    }
  }

  @Override
  public int read() throws IOException {
    int one = super.read();
    count(one < 0 ? 0 : 1);
    return one;
  }

  @Override
  public int read(byte[] into, int offset, int length) throws IOException {
    int more = super.read(into, offset, length);
    count(Math.max(0, more));
    return more;
  }

  private void count(int more) {
    read += more;
    if (read > MOST_BYTES) {
      throw new TooLongException();
    }
  }
}
