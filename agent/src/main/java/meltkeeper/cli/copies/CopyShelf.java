package meltkeeper.cli.copies;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The folder of daily copies, one a day, {@code meltkeeper-2026-01-05.db}. Other files in it are
 * left alone.
 *
 * @param keep how many days are kept
 */
public record CopyShelf(Path folder, int keep) {

  private static final Pattern NAME = Pattern.compile("meltkeeper-(\\d{4}-\\d{2}-\\d{2})\\.db");

  /** The file of a day's copy. */
  Path of(LocalDate day) {
    return folder.resolve("meltkeeper-" + day + ".db");
  }

  /** The copies that are there, newest day first. */
  List<Path> copies() throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(file -> NAME.matcher(String.valueOf(file.getFileName())).matches())
          .sorted(Comparator.comparing(Path::toString).reversed())
          .toList();
    }
  }

  /** The days of which there is a copy, newest first. */
  public List<LocalDate> days() throws IOException {
    return copies().stream()
        .map(copy -> NAME.matcher(String.valueOf(copy.getFileName())))
        .filter(Matcher::matches)
        .map(name -> LocalDate.parse(name.group(1)))
        .toList();
  }

  /**
   * Deletes the oldest until as many as are kept are there. The copy of {@code today} stays, even
   * if a clock that once was wrong has left copies of later days.
   */
  void prune(LocalDate today) throws IOException {
    List<Path> others = copies().stream().filter(copy -> !copy.equals(of(today))).toList();
    int room = Files.exists(of(today)) ? keep - 1 : keep;
    for (Path copy : others.subList(Math.min(Math.max(room, 0), others.size()), others.size())) {
      Files.delete(copy);
    }
  }
}
