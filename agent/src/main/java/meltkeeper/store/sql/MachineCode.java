package meltkeeper.store.sql;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Arrays;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.sqlite.SQLiteJDBCLoader;
import org.sqlite.util.LibraryLoaderUtil;

/**
 * SQLite's machine code, unpacked once for each user.
 *
 * <p>Left to itself the driver unpacks it into the temp folder at every start and deletes it at the
 * end, which a process that is killed never comes to: one that is killed often would fill the disk.
 * Here it lies in the user's own cache folder, where nobody else can lay other code in its place,
 * gets its name when it is whole, and is compared with the jar's bytes at each start. Where it
 * cannot be written, or {@code org.sqlite.lib.path} names another place, the driver goes its way.
 */
final class MachineCode {

  private static final Logger LOG = LoggerFactory.getLogger(MachineCode.class);
  private static final String FOLDER = "org.sqlite.lib.path";
  private static final String NAME = "org.sqlite.lib.name";

  private static boolean prepared;

  private MachineCode() {}

  /** To be called before the first connection; does nothing after that. */
  static synchronized void prepare() {
    if (prepared) {
      return;
    }
    prepared = true;
    if (System.getProperty(FOLDER) != null) {
      return;
    }
    Path folder = Path.of(System.getProperty("user.home", ""), ".cache", "meltkeeper");
    try {
      unpack(folder)
          .ifPresent(
              name -> {
                System.setProperty(FOLDER, folder.toString());
                System.setProperty(NAME, name);
              });
    } catch (IOException e) {
      LOG.debug("SQLite's machine code is unpacked anew at this start: {}", e.toString());
    }
  }

  /** The file's name within the folder; empty when the jar has none for this computer. */
  private static Optional<String> unpack(Path folder) throws IOException {
    String name = LibraryLoaderUtil.getNativeLibName();
    try (InputStream packed =
        SQLiteJDBCLoader.class.getResourceAsStream(
            LibraryLoaderUtil.getNativeLibResourcePath() + "/" + name)) {
      if (packed == null) {
        return Optional.empty();
      }
      byte[] code = packed.readAllBytes();
      Path file = folder.resolve(name);
      if (!Files.isRegularFile(file) || !Arrays.equals(Files.readAllBytes(file), code)) {
        Files.createDirectories(folder);
        write(code, file);
      }
      return Optional.of(name);
    }
  }

  /** A process that runs the former file keeps it, for it is replaced and not written over. */
  private static void write(byte[] code, Path file) throws IOException {
    Path part = file.resolveSibling(file.getFileName() + "." + ProcessHandle.current().pid());
    try {
      Files.copy(new ByteArrayInputStream(code), part, StandardCopyOption.REPLACE_EXISTING);
      Files.move(part, file, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      throw new IOException("its folder moves no file in one step", e);
    } finally {
      Files.deleteIfExists(part);
    }
  }
}
