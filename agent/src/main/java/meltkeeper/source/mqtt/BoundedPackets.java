package meltkeeper.source.mqtt;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/**
 * The packets of a broker, none longer than {@value #MOST_BYTES} bytes: the client library makes
 * room for a packet as long as its head says, up to 256 MB, before it reads it. What a longer
 * message has beyond is left out, so that it arrives, is seen to be too long, and is acknowledged;
 * refused, it would come again for ever. Fixed head: MQTT 5.0, 2.1.
 */
final class BoundedPackets extends FilterInputStream {

  /** Room for the longest topic and a payload that a decoder sees to be too long. */
  static final int MOST_BYTES = 400_000;

  private static final int PUBLISH = 3;
  private static final int LENGTH_BYTES = 4;

  private final byte[] head = new byte[1 + LENGTH_BYTES];
  private int headAt;
  private int headLength;
  private long passing;
  private long dropping;

  BoundedPackets(InputStream in) {
    super(in);
  }

  @Override
  public int read() throws IOException {
    if (!beginPacket()) {
      return -1;
    }
    if (headAt < headLength) {
      return head[headAt++] & 0xff;
    }
    int one = in.read();
    passing -= one < 0 ? 0 : 1;
    return one;
  }

  @Override
  public int read(byte[] bytes, int from, int length) throws IOException {
    if (length == 0) {
      return 0;
    }
    if (!beginPacket()) {
      return -1;
    }
    if (headAt < headLength) {
      bytes[from] = head[headAt++];
      return 1;
    }
    int count = in.read(bytes, from, (int) Math.min(length, passing));
    passing -= Math.max(0, count);
    return count;
  }

  /** Stands at a head or within a packet afterwards; false at the end of the stream. */
  private boolean beginPacket() throws IOException {
    if (headAt < headLength || passing > 0) {
      return true;
    }
    if (dropping > 0) {
      in.skipNBytes(dropping);
      dropping = 0;
    }
    int first = in.read();
    if (first < 0) {
      return false;
    }
    long length = length();
    boolean isLong = length > MOST_BYTES;
    if (isLong && first >> 4 != PUBLISH) {
      throw new IOException(
          "the broker sent a packet of "
              + length
              + " bytes that is no message; allowed: "
              + MOST_BYTES);
    }
    passing = Math.min(length, MOST_BYTES);
    dropping = length - passing;
    write(first, (int) passing);
    return true;
  }

  private long length() throws IOException {
    long length = 0;
    for (int i = 0; i < LENGTH_BYTES; i++) {
      int one = in.read();
      if (one < 0) {
        throw new IOException("the connection ended within the head of a packet");
      }
      length |= (long) (one & 0x7f) << (7 * i);
      if (one < 0x80) {
        return length;
      }
    }
    throw new IOException("the broker sent what is no MQTT: a length of more than 4 bytes");
  }

  private void write(int first, int length) {
    head[0] = (byte) first;
    headLength = 1;
    headAt = 0;
    int left = length;
    do {
      head[headLength++] = (byte) (left > 0x7f ? (left & 0x7f) | 0x80 : left);
      left >>= 7;
    } while (left > 0);
  }

  @Override
  public long skip(long count) {
    throw new UnsupportedOperationException("whoever reads packets reads all of them");
  }

  @Override
  public boolean markSupported() {
    return false;
  }
}
