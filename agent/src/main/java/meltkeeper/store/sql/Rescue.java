package meltkeeper.store.sql;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import meltkeeper.store.StoreException;

/**
 * Writes a database file anew whose name, or whose log's name, was deleted while it is open.
 *
 * @param path where it stood
 */
record Rescue(Path path) {

  /**
   * Puts all that an open connection still sees under the former name, synced.
   *
   * @throws StoreException when that fails; the connection can be asked again
   */
  void writeAnew(Lane open) {
    Path copy = path.resolveSibling(path.getFileName() + ".rescued");
    try {
      Files.deleteIfExists(copy);
      open.copyInto(copy);
      sync(copy);
      // A log must never stand beside a file that it does not belong to.
      Files.deleteIfExists(Standing.log(path));
      Files.deleteIfExists(path.resolveSibling(path.getFileName() + "-shm"));
      Files.move(copy, path, StandardCopyOption.ATOMIC_MOVE);
      sync(path.toAbsolutePath().getParent());
    } catch (IOException e) {
      throw new StoreException(
          "store %s: it was deleted while in use, and could not be written anew (%s); let this user write there, and do not stop the agent before"
              .formatted(path, e),
          e);
    }
  }

  private static void sync(@org.jspecify.annotations.Nullable Path file) throws IOException {
    if (file != null) {
      try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
        channel.force(true);
      }
    }
  }
}
