package meltkeeper.store.sql;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import meltkeeper.store.StoreException;

/**
 * The right to write credits to a database file: the operating system's lock on {@code FILE.lock},
 * which ends with the process however it dies. The file holds the holder's process id and stays
 * when the claim is given back. Safe for use by several threads.
 */
final class Claim implements AutoCloseable {

  /**
   * Claims of this process. A process that closes any handle of a locked file gives its lock away
   * (POSIX fcntl), so a second claim must not even open the file.
   */
  private static final Set<Path> HELD = new HashSet<>();

  private final Path database;
  private final Path lockFile;
  private Optional<FileChannel> held = Optional.empty();
  private Optional<Object> standing = Optional.empty();

  /** The claim on the file of that real path. */
  Claim(Path database) {
    this.database = database;
    this.lockFile = database.resolveSibling(database.getFileName() + ".lock");
  }

  /** Takes the claim, or does nothing when it is already taken here and still holds. */
  void take() {
    synchronized (HELD) {
      try {
        if (held.isPresent()) {
          if (standing.equals(Standing.fileKey(lockFile))) {
            return;
          }
          // Somebody deleted it: another agent could lock a new one beside us.
          giveBack(held.get());
        }
        if (HELD.contains(lockFile)) {
          throw taken(String.valueOf(ProcessHandle.current().pid()));
        }
        held = Optional.of(locked());
        HELD.add(lockFile);
        standing = Standing.fileKey(lockFile);
      } catch (IOException e) {
        throw new StoreException(
            "store %s: could not lock %s (%s); let this user write there"
                .formatted(database, lockFile, e),
            e);
      }
    }
  }

  private FileChannel locked() throws IOException {
    FileChannel channel =
        FileChannel.open(
            lockFile, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
    boolean locked = false;
    try {
      FileLock lock = channel.tryLock();
      if (lock == null) {
        throw taken(holder(channel));
      }
      byte[] pid = (ProcessHandle.current().pid() + "\n").getBytes(StandardCharsets.US_ASCII);
      channel.truncate(0).write(ByteBuffer.wrap(pid), 0);
      locked = true;
      return channel;
    } finally {
      if (!locked) {
        channel.close();
      }
    }
  }

  private static String holder(FileChannel channel) throws IOException {
    ByteBuffer text = ByteBuffer.allocate(32);
    channel.read(text, 0);
    return new String(text.array(), 0, text.position(), StandardCharsets.US_ASCII).strip();
  }

  private StoreException taken(String pid) {
    return new StoreException(
        ("store %s: process %s is writing to it (it holds %s); stop that process first,"
                + " or name another file for the store")
            .formatted(database, pid, lockFile));
  }

  @Override
  public void close() {
    synchronized (HELD) {
      if (held.isPresent()) {
        try {
          giveBack(held.get());
        } catch (IOException e) {
          throw new StoreException("store %s: could not unlock it".formatted(database), e);
        }
      }
    }
  }

  private void giveBack(FileChannel channel) throws IOException {
    channel.close();
    HELD.remove(lockFile);
    held = Optional.empty();
  }
}
