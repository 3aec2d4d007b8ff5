package meltkeeper.protocol;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Bytes as they came. Immutable by agreement: whoever hands an array over with {@link #of(byte[])}
 * gives it away, and {@link #array()} is for reading only; copying every message would cost more
 * than reading it.
 */
public final class Payload {

  private static final VarHandle EIGHT_BYTES =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.nativeOrder());
  private static final long HIGH_BITS = 0x8080_8080_8080_8080L;

  private final byte[] bytes;

  private Payload(byte[] bytes) {
    this.bytes = bytes;
  }

  /** Takes the array over without copying. */
  public static Payload of(byte[] bytes) {
    return new Payload(bytes);
  }

  /** The text in UTF-8. */
  public static Payload of(String text) {
    return new Payload(text.getBytes(StandardCharsets.UTF_8));
  }

  /** The bytes themselves, not to be written to. */
  public byte[] array() {
    return bytes;
  }

  /** Number of bytes. */
  public int length() {
    return bytes.length;
  }

  /** A view that cannot be written to. */
  public ByteBuffer view() {
    return ByteBuffer.wrap(bytes).asReadOnlyBuffer();
  }

  /** The bytes as UTF-8, each malformed sequence as U+FFFD. */
  public String text() {
    return new String(bytes, StandardCharsets.UTF_8);
  }

  /** True when the bytes are well-formed UTF-8 (RFC 3629). */
  public boolean isUtf8() {
    if (isAscii()) {
      return true;
    }
    try {
      StandardCharsets.UTF_8.newDecoder().decode(view());
      return true;
    } catch (CharacterCodingException e) {
      return false;
    }
  }

  private boolean isAscii() {
    int from = 0;
    for (; from + Long.BYTES <= bytes.length; from += Long.BYTES) {
      if (((long) EIGHT_BYTES.get(bytes, from) & HIGH_BITS) != 0) {
        return false;
      }
    }
    for (; from < bytes.length; from++) {
      if (bytes[from] < 0) {
        return false;
      }
    }
    return true;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Payload that && Arrays.equals(bytes, that.bytes);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(bytes);
  }

  @Override
  public String toString() {
    return text();
  }
}
