package meltkeeper.cli.tune;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeSet;
import meltkeeper.desk.CsvTable;
import meltkeeper.desk.RefusedException;
import meltkeeper.desk.When;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Nearest;

/** The table of jams that happened in a recording, one row a jam. Collects its faults. */
public final class JamNotes {

  private static final String PRINTER = "printer";
  private static final String HOT_END = "hot-end";
  private static final String BEGAN = "began";
  private static final String STALLED = "stalled";
  private static final String NOTE = "note";
  private static final List<String> COLUMNS = List.of(PRINTER, HOT_END, BEGAN, STALLED, NOTE);
  private static final List<String> OPTIONAL = List.of(HOT_END, BEGAN, NOTE);

  private static final String TIME =
      "a date and time as 2026-03-02T14:20 by the shop's clock, or 2026-03-02T14:20+01:00";

  private final String name;
  private final Collection<String> printers;
  private final When when;
  private final List<Fault> faults;

  /**
   * The table of that name.
   *
   * @param printers of the configuration
   * @param zone of times without an offset
   * @param faults where they are added
   */
  public JamNotes(String name, Collection<String> printers, ZoneId zone, List<Fault> faults) {
    this.name = name;
    this.printers = printers;
    this.when = new When(zone, 0);
    this.faults = faults;
  }

  /** The file with the jams of a recording: beside it, its name and {@code .jams.csv}. */
  public static Path beside(Path recording) {
    return recording.resolveSibling(recording.getFileName() + ".jams.csv");
  }

  /** The fault of a recording without such a file. */
  public static Fault missing(Path recording) {
    return Fault.of(
            "--tune",
            "no file " + beside(recording),
            "a table of the jams beside each recording",
            "write one; when nothing jammed, its header alone: "
                + String.join(",", List.of(PRINTER, STALLED)))
        .at(recording.toString());
  }

  /** The jams of its text, those without fault. */
  public List<JamNote> read(String text) {
    List<JamNote> notes = new ArrayList<>();
    for (CsvTable.Row row : CsvTable.read(name, text, COLUMNS, OPTIONAL, faults)) {
      note(row).ifPresent(notes::add);
    }
    return List.copyOf(notes);
  }

  private Optional<JamNote> note(CsvTable.Row row) {
    int before = faults.size();
    String printer = row.value(PRINTER);
    if (!printers.contains(printer)) {
      tell(
          row,
          Fault.of(
              PRINTER,
              printer,
              "one of " + String.join(", ", new TreeSet<>(printers)),
              Nearest.to(printer, printers).map(near -> "did you mean " + near + "?").orElse("")));
    }
    int hotEnd = hotEnd(row);
    OptionalLong began = row.value(BEGAN).isEmpty() ? OptionalLong.empty() : time(row, BEGAN);
    OptionalLong stalled = time(row, STALLED);
    if (began.isPresent() && stalled.isPresent() && began.getAsLong() > stalled.getAsLong()) {
      tell(
          row,
          Fault.of(
              BEGAN,
              row.value(BEGAN),
              "a time before it stalled, " + row.value(STALLED),
              "leave it empty where nobody knows"));
    }
    return faults.size() > before
        ? Optional.empty()
        : Optional.of(
            new JamNote(
                name + ":" + row.line(),
                new HotEnd(printer, hotEnd),
                began,
                stalled.orElseThrow(),
                row.value(STALLED),
                row.value(NOTE)));
  }

  private int hotEnd(CsvTable.Row row) {
    String text = row.value(HOT_END);
    if (text.isEmpty()) {
      return 0;
    }
    if (text.matches("[0-9]{1,2}") && Integer.parseInt(text) <= HotEnd.MAX_INDEX) {
      return Integer.parseInt(text);
    }
    tell(row, Fault.of(HOT_END, text, "0 to " + HotEnd.MAX_INDEX + ", or empty for the first, 0"));
    return 0;
  }

  private OptionalLong time(CsvTable.Row row, String column) {
    String text = row.value(column);
    if (!text.matches("[0-9]{4}-.*")) {
      tell(row, Fault.of(column, text, TIME));
      return OptionalLong.empty();
    }
    try {
      return OptionalLong.of(when.at(column, text));
    } catch (RefusedException e) {
      e.faults()
          .forEach(
              fault ->
                  tell(
                      row,
                      fault.allowed().equals(When.ALLOWED) ? Fault.of(column, text, TIME) : fault));
      return OptionalLong.empty();
    }
  }

  private void tell(CsvTable.Row row, Fault fault) {
    faults.add(fault.at(name + ":" + row.line()));
  }
}
