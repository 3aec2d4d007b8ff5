package meltkeeper.cli.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import meltkeeper.desk.Report;
import org.apache.commons.csv.CSVFormat;

/** A report as a table, one row a hot end; a column for each band that anyone was in. */
final class ReportCsv {

  private static final List<String> COLUMNS =
      List.of(
          "printer",
          "hot_end",
          "since",
          "until",
          "hot_hours",
          "printing_hours",
          "filament_m",
          "idle_hours",
          "bridged_hours",
          "unobserved_hours",
          "swaps",
          "jams",
          "costs_parts",
          "costs_labour",
          "costs_jams",
          "costs_total",
          "currency");

  private ReportCsv() {}

  static String print(Report report) {
    List<String> bands =
        report.hotEnds().stream()
            .flatMap(hotEnd -> hotEnd.total().hotSeconds().keySet().stream())
            .distinct()
            .sorted(Comparator.comparingInt(ReportCsv::lowerEdge))
            .toList();
    List<List<Object>> rows = new ArrayList<>();
    List<Object> header = new ArrayList<>(COLUMNS);
    bands.forEach(band -> header.add("hot_hours_" + band));
    rows.add(header);
    report.hotEnds().forEach(hotEnd -> rows.add(row(report, hotEnd, bands)));
    return rows.stream()
        .map(
            row -> CSVFormat.RFC4180.format(row.toArray()) + CSVFormat.RFC4180.getRecordSeparator())
        .collect(Collectors.joining());
  }

  private static List<Object> row(Report report, Report.OfHotEnd hotEnd, List<String> bands) {
    List<Object> row =
        new ArrayList<>(
            List.of(
                hotEnd.printer(),
                hotEnd.hotEnd(),
                report.since(),
                report.until(),
                hotEnd.hotHours(),
                hotEnd.printingHours(),
                hotEnd.filamentMetres(),
                hours(hotEnd.total().idleSeconds()),
                hours(hotEnd.total().bridgedSeconds()),
                hours(hotEnd.total().unobservedSeconds()),
                hotEnd.swaps().size(),
                hotEnd.jams(),
                hotEnd.costs().parts(),
                hotEnd.costs().labour(),
                hotEnd.costs().jams(),
                hotEnd.costs().total(),
                report.currency()));
    Map<String, BigDecimal> hot = hotEnd.total().hotSeconds();
    bands.forEach(band -> row.add(hours(hot.getOrDefault(band, BigDecimal.ZERO))));
    return row;
  }

  private static BigDecimal hours(BigDecimal seconds) {
    return seconds.divide(BigDecimal.valueOf(3600), 3, RoundingMode.HALF_UP);
  }

  /** {@code 215} of {@code 215-220}; a band below zero begins with its own sign. */
  private static int lowerEdge(String band) {
    return Integer.parseInt(band.substring(0, band.indexOf('-', 1)));
  }
}
