package meltkeeper.desk;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.Nearest;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * A table with a header as spreadsheets save it (RFC 4180): a byte order mark, either line end,
 * quoted values and semicolons instead of commas are all read.
 */
public final class CsvTable {

  private static final CSVFormat FORMAT =
      CSVFormat.RFC4180.builder().setIgnoreSurroundingSpaces(true).setIgnoreEmptyLines(false).get();

  private CsvTable() {}

  /**
   * A row below the header.
   *
   * @param line of the file, from 1
   */
  public record Row(long line, List<String> columns, List<String> values) {

    public Row {
      columns = List.copyOf(columns);
      values = List.copyOf(values);
    }

    /** The value in a column, empty when the table has none of that name. */
    public String value(String column) {
      int at = columns.indexOf(column);
      return at < 0 ? "" : values.get(at);
    }

    /** Position of a column, from 1. */
    public int column(String name) {
      return columns.indexOf(name) + 1;
    }
  }

  /** A line of values, as it is in the file. */
  private record Line(long number, List<String> values) {}

  /**
   * The rows with a value for each column of the header; adds a fault for whatever is wrong with
   * the rest.
   *
   * @param name of the file
   * @param columns allowed
   * @param optional of them, those that the table may leave out
   */
  public static List<Row> read(
      String name, String text, List<String> columns, List<String> optional, List<Fault> faults) {
    List<Line> lines = lines(name, text, faults);
    if (lines.isEmpty()) {
      if (faults.isEmpty()) {
        faults.add(Fault.of("", "nothing", "a header: " + String.join(",", columns)).at(name));
      }
      return List.of();
    }
    Line header = lines.get(0);
    List<String> found =
        header.values().stream().map(value -> value.toLowerCase(Locale.ROOT)).toList();
    if (!isHeader(name + ":" + header.number(), found, columns, optional, faults)) {
      return List.of();
    }
    List<Row> rows = new ArrayList<>();
    for (Line line : lines.subList(1, lines.size())) {
      if (line.values().size() == found.size()) {
        rows.add(new Row(line.number(), found, line.values()));
      } else {
        faults.add(wrongCount(name, line, found));
      }
    }
    return rows;
  }

  private static Fault wrongCount(String name, Line line, List<String> header) {
    return Fault.of(
            "",
            String.join(",", line.values()),
            header.size() + " values: " + String.join(",", header),
            "this line has "
                + line.values().size()
                + (line.values().size() > header.size()
                    ? "; a decimal comma splits a number in two, write a point"
                    : ""))
        .at(name + ":" + line.number());
  }

  private static boolean isHeader(
      String place,
      List<String> found,
      List<String> columns,
      List<String> optional,
      List<Fault> faults) {
    int before = faults.size();
    Set<String> seen = new HashSet<>();
    for (String column : found) {
      if (!columns.contains(column)) {
        faults.add(
            Fault.of(
                    "header",
                    column,
                    "the columns " + String.join(",", columns) + " in any order",
                    Nearest.to(column, columns)
                        .map(near -> "did you mean " + near + "?")
                        .orElse("the first line names the columns; drop others"))
                .at(place));
      } else if (!seen.add(column)) {
        faults.add(Fault.of("header", column, "each column once").at(place));
      }
    }
    for (String column : columns) {
      if (!found.contains(column) && !optional.contains(column)) {
        faults.add(
            Fault.of("header", String.join(",", found), "a column " + column + " as well")
                .at(place));
      }
    }
    return faults.size() == before;
  }

  private static List<Line> lines(String name, String text, List<Fault> faults) {
    String plain = text.startsWith("\uFEFF") ? text.substring(1) : text;
    List<Line> lines = new ArrayList<>();
    long linesBefore = 0;
    try (CSVParser parser =
        CSVParser.builder()
            .setCharSequence(plain)
            .setFormat(FORMAT.builder().setDelimiter(separator(plain)).get())
            .get()) {
      for (CSVRecord row : parser) {
        if (row.stream().anyMatch(value -> !value.isEmpty())) {
          lines.add(new Line(linesBefore + 1, List.of(row.values())));
        }
        linesBefore = parser.getCurrentLineNumber();
      }
    } catch (IOException | UncheckedIOException e) {
      faults.add(
          Fault.of(
                  "",
                  "a quotation mark",
                  "values in quotation marks that are closed before the next comma (RFC 4180)",
                  "look in this line and below")
              .at(name + ":" + (linesBefore + 1)));
    }
    return lines;
  }

  private static char separator(String text) {
    String header = text.lines().findFirst().orElse("");
    return header.indexOf(';') >= 0 && header.indexOf(',') < 0 ? ';' : ',';
  }
}
