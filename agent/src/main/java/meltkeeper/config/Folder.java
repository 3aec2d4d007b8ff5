package meltkeeper.config;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Collections;
import java.util.Optional;
import java.util.Set;

/** The configuration's folder, from which the paths in it count. */
record Folder(Path path) {

  private static final Set<PosixFilePermission> EVERYBODY =
      Set.of(PosixFilePermission.OTHERS_READ, PosixFilePermission.OTHERS_WRITE);

  /** The file that a key names; its fault is told when it cannot be read. */
  Optional<Path> file(Fields fields, Key<Path> key) {
    Optional<Path> file = fields.find(key).map(path::resolve).map(Path::normalize);
    file.filter(found -> !Files.isRegularFile(found) || !Files.isReadable(found))
        .ifPresent(
            found ->
                fields
                    .entryOrBlank(key)
                    .tell(
                        found.toString(),
                        key.form().allowed(),
                        Files.exists(found)
                            ? "let the user that runs Meltkeeper read it"
                            : "there is no such file; a relative path counts from the"
                                + " configuration's folder"));
    return file;
  }

  /** The same for a file with a secret: a fault, too, when everybody may read or write it. */
  Optional<Path> secret(Fields fields, Key<Path> key) {
    Optional<Path> file = file(fields, key);
    file.filter(Files::isRegularFile)
        .ifPresent(
            found ->
                openTo(found)
                    .ifPresent(
                        permissions ->
                            fields
                                .entryOrBlank(key)
                                .tell(
                                    found + " with permissions " + permissions,
                                    "a file with a secret that its owner and group alone may use",
                                    "chmod 600 " + found)));
    return file;
  }

  /** Its permissions when they let everybody in; empty where a file has none of this kind. */
  private static Optional<String> openTo(Path file) {
    try {
      Set<PosixFilePermission> permissions = Files.getPosixFilePermissions(file);
      return Collections.disjoint(permissions, EVERYBODY)
          ? Optional.empty()
          : Optional.of(PosixFilePermissions.toString(permissions));
    } catch (IOException | UnsupportedOperationException e) {
      return Optional.empty();
    }
  }
}
