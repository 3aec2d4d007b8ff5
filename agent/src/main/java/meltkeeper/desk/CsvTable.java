package meltkeeper.desk;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.dataformat.csv.CsvFactory;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.Nearest;

/**
 * A table with a header as spreadsheets save it (RFC 4180): a byte order mark, either line end,
 * quoted values and semicolons instead of commas are all read.
 */
final class CsvTable {

  private static final CsvFactory FACTORY =
      CsvFactory.builder()
          .enable(CsvParser.Feature.WRAP_AS_ARRAY)
          .enable(CsvParser.Feature.TRIM_SPACES)
          .enable(CsvParser.Feature.SKIP_EMPTY_LINES)
          .build();

  private CsvTable() {}

  /**
   * A row below the header.
   *
   * @param line of the file, from 1
   */
  record Row(int line, List<String> columns, List<String> values) {

    String value(String column) {
      return values.get(columns.indexOf(column));
    }

    /** Position of a column, from 1. */
    int column(String name) {
      return columns.indexOf(name) + 1;
    }
  }

  /** A line of values, as it is in the file. */
  private record Line(int number, List<String> values) {}

  /** The rows that hold every column; adds a fault for whatever is wrong with the rest. */
  static List<Row> read(String name, String text, List<String> columns, List<Fault> faults) {
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
    if (!isHeader(name + ":" + header.number(), found, columns, faults)) {
      return List.of();
    }
    List<Row> rows = new ArrayList<>();
    for (Line line : lines.subList(1, lines.size())) {
      if (line.values().size() == found.size()) {
        rows.add(new Row(line.number(), found, line.values()));
      } else if (!line.values().stream().allMatch(String::isEmpty)) {
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
      String place, List<String> found, List<String> columns, List<Fault> faults) {
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
      if (!found.contains(column)) {
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
    try (CsvParser parser = FACTORY.createParser(plain)) {
      parser.setSchema(CsvSchema.emptySchema().withColumnSeparator(separator(plain)));
      List<String> values = new ArrayList<>();
      int number = 1;
      for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
        if (token == JsonToken.START_ARRAY) {
          values.clear();
          number = parser.currentTokenLocation().getLineNr();
        } else if (token == JsonToken.VALUE_STRING) {
          values.add(parser.getText());
        } else if (token == JsonToken.END_ARRAY) {
          lines.add(new Line(number, List.copyOf(values)));
        }
      }
    } catch (JsonProcessingException e) {
      faults.add(
          Fault.of(
                  "",
                  e.getOriginalMessage(),
                  "comma-separated values as of RFC 4180",
                  "look for a quotation mark that is not closed")
              .at(name + ":" + e.getLocation().getLineNr()));
    } catch (IOException e) {
      throw new UncheckedIOException(
          "a bug in Meltkeeper: a text in memory cannot fail to read", e);
    }
    return lines;
  }

  private static char separator(String text) {
    String header = text.lines().findFirst().orElse("");
    return header.indexOf(';') >= 0 && header.indexOf(',') < 0 ? ';' : ',';
  }
}
