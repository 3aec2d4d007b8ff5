package meltkeeper.desk;

import java.util.Arrays;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import meltkeeper.part.Because;
import meltkeeper.part.Ending;
import meltkeeper.part.Exposure;
import meltkeeper.part.Part;
import meltkeeper.part.Shelf;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.Nearest;

/**
 * The rules of a table kept on paper. Collects faults; its parts count only when there are none.
 */
final class PaperTable {

  private static final List<String> COLUMNS =
      List.of("id", "kind", "ended", "temperature", "hours");
  private static final String STILL_FITTED = "still-fitted";
  private static final List<String> ENDINGS =
      Stream.concat(Arrays.stream(Because.values()).map(Because::word), Stream.of(STILL_FITTED))
          .toList();

  private final String name;
  private final Shelf shelf;
  private final Collection<String> kinds;
  private final List<Fault> faults;

  PaperTable(String name, Shelf shelf, Collection<String> kinds, List<Fault> faults) {
    this.name = name;
    this.shelf = shelf;
    this.kinds = kinds;
    this.faults = faults;
  }

  /** What the rows of one part say together. */
  private static final class Past {
    private final CsvTable.Row first;
    private final Set<Double> temperatures = new HashSet<>();
    private Exposure exposure = Exposure.NONE;

    private Past(CsvTable.Row first) {
      this.first = first;
    }
  }

  List<Part> parts(String text, long nowNanos) {
    Map<String, Past> pasts = new LinkedHashMap<>();
    for (CsvTable.Row row : CsvTable.read(name, text, COLUMNS, List.of(), faults)) {
      take(row, pasts);
    }
    if (pasts.isEmpty() && faults.isEmpty()) {
      faults.add(Fault.of("", "no rows", "a header and one row a part and temperature").at(name));
    }
    if (!faults.isEmpty()) {
      return List.of();
    }
    return pasts.values().stream().map(past -> part(past, nowNanos)).toList();
  }

  private static Part part(Past past, long nowNanos) {
    return new Part(
        past.first.value("id"),
        past.first.value("kind"),
        Optional.empty(),
        nowNanos,
        Optional.of(new Part.PaperPast(past.exposure, ending(past.first.value("ended")))),
        List.of());
  }

  private static Ending ending(String word) {
    return Because.ofWord(word)
        .map(Ending::of)
        .orElse(new Ending.Censored(Ending.Why.STILL_FITTED));
  }

  private void take(CsvTable.Row row, Map<String, Past> pasts) {
    Past past = pasts.get(row.value("id"));
    if (past == null) {
      past = new Past(row);
      pasts.put(row.value("id"), past);
      tell(row, shelf.checkNewId(row.value("id")));
      tell(row, Shelf.checkKind(row.value("kind"), kinds));
      checkEnding(row);
    } else {
      checkSame(row, past.first, "kind");
      checkSame(row, past.first, "ended");
    }
    OptionalDouble celsius = number(row, "temperature", 600, "°C, above 0 to 600");
    OptionalDouble hours = number(row, "hours", 100_000, "hot hours, above 0 to 100000");
    if (celsius.isPresent() && !past.temperatures.add(celsius.getAsDouble())) {
      tell(
          row,
          List.of(
              Fault.of(
                  "temperature",
                  row.value("temperature"),
                  "one row a part and temperature",
                  "add the hours of both rows up")));
    }
    if (celsius.isPresent() && hours.isPresent()) {
      past.exposure = past.exposure.plus(Exposure.of(celsius.getAsDouble(), hours.getAsDouble()));
    }
  }

  private void checkEnding(CsvTable.Row row) {
    String word = row.value("ended");
    if (!ENDINGS.contains(word)) {
      tell(
          row,
          List.of(
              Fault.of(
                  "ended",
                  word,
                  "one of " + String.join(", ", ENDINGS),
                  Nearest.to(word, ENDINGS).map(near -> "did you mean " + near + "?").orElse(""))));
    }
  }

  private void checkSame(CsvTable.Row row, CsvTable.Row first, String key) {
    if (!row.value(key).equals(first.value(key))) {
      tell(
          row,
          List.of(
              Fault.of(
                  key,
                  row.value(key),
                  first.value(key) + ", as for " + row.value("id") + " in line " + first.line(),
                  "a part is of one kind and has one ending")));
    }
  }

  private OptionalDouble number(CsvTable.Row row, String key, double most, String allowed) {
    String text = row.value(key);
    String mend = "";
    if (text.matches("[0-9]+,[0-9]+")) {
      mend = "write the decimal point as a point: " + text.replace(',', '.');
    } else if (text.matches("[0-9]{1,6}(\\.[0-9]{1,9})?")) {
      double value = Double.parseDouble(text);
      if (value > 0 && value <= most) {
        return OptionalDouble.of(value);
      }
    }
    tell(row, List.of(Fault.of(key, text, "a number, " + allowed, mend)));
    return OptionalDouble.empty();
  }

  private void tell(CsvTable.Row row, List<Fault> found) {
    for (Fault fault : found) {
      String key = fault.key();
      faults.add(fault.at(name + ":" + row.line() + ":" + row.column(key)));
    }
  }
}
