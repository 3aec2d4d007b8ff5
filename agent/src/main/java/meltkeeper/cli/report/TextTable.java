package meltkeeper.cli.report;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;

/** A table for people: a header, aligned columns, numbers to the right. */
public final class TextTable {

  private final List<Boolean> numeric = new ArrayList<>();
  private final List<List<String>> rows = new ArrayList<>();

  /**
   * A table with that header.
   *
   * @param headers each with its unit; one that begins with {@code >} holds numbers
   */
  public TextTable(String... headers) {
    List<String> names = new ArrayList<>();
    for (String header : headers) {
      boolean isNumeric = header.startsWith(">");
      numeric.add(isNumeric);
      names.add(isNumeric ? header.substring(1) : header);
    }
    rows.add(names);
  }

  /** Adds a row with as many cells as the header has. */
  public TextTable row(String... cells) {
    if (cells.length != numeric.size()) {
      throw new IllegalArgumentException(
          "a row of " + cells.length + " cells in a table of " + numeric.size() + " columns");
    }
    rows.add(List.of(cells));
    return this;
  }

  /** Prints it. */
  public void print(PrintWriter out) {
    int[] widths = new int[numeric.size()];
    for (List<String> row : rows) {
      for (int i = 0; i < widths.length; i++) {
        widths[i] = Math.max(widths[i], width(row.get(i)));
      }
    }
    for (List<String> row : rows) {
      StringBuilder line = new StringBuilder();
      for (int i = 0; i < widths.length; i++) {
        String gap = " ".repeat(widths[i] - width(row.get(i)));
        line.append(i == 0 ? "" : "  ")
            .append(numeric.get(i) ? gap + row.get(i) : row.get(i) + gap);
      }
      out.println(line.toString().stripTrailing());
    }
  }

  private static int width(String cell) {
    return cell.codePointCount(0, cell.length());
  }
}
