package meltkeeper.endure;

/** What a process did, as the operating system saw it. */
sealed interface Happening {

  /** Bytes written into a file; they may stay in memory. */
  record Written(String file, int offset, Bytes bytes) implements Happening {}

  /** A file's length set; it may stay in memory. */
  record Cut(String file, int length) implements Happening {}

  /** A file removed; its name may come back until anything is synced. */
  record Removed(String file) implements Happening {}

  /** A file's bytes and length are on the disk. */
  record Synced(String file) implements Happening {}

  /** A line printed that ends a commit: everything up to then is promised. */
  record Promised(long untilNanos) implements Happening {}

  /** Bytes that nobody changes. */
  final class Bytes {

    private final byte[] bytes;

    Bytes(byte[] bytes) {
      this.bytes = bytes.clone();
    }

    int length() {
      return bytes.length;
    }

    /** Copies from {@code from} on, at most {@code count} of them. */
    void copy(int from, int count, byte[] to, int at) {
      System.arraycopy(bytes, from, to, at, count);
    }
  }
}
