package meltkeeper.config;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** The configuration's folder, from which the paths in it count. */
record Folder(Path path) {

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
}
