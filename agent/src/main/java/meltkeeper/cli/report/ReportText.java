package meltkeeper.cli.report;

import java.io.PrintWriter;
import java.io.StringWriter;
import meltkeeper.desk.Report;

/** A report as tables for people. */
final class ReportText {

  private ReportText() {}

  static String print(Report report) {
    StringWriter text = new StringWriter();
    PrintWriter out = new PrintWriter(text);
    out.printf(
        "From %s to %s, zone %s%n%n",
        Shown.time(report.since(), report), Shown.time(report.until(), report), report.zone());
    hours(report).print(out);
    if (report.hotEnds().stream().anyMatch(h -> !h.total().hotSeconds().isEmpty())) {
      out.println();
      bands(report).print(out);
    }
    if (report.hotEnds().stream().anyMatch(hotEnd -> !hotEnd.swaps().isEmpty())) {
      out.println();
      swaps(report).print(out);
    }
    out.printf(
        "%nCosts: %s %s; parts %s, labour %s, jams %s%n",
        report.costs().total(),
        report.currency(),
        report.costs().parts(),
        report.costs().labour(),
        report.costs().jams());
    report.notes().forEach(note -> out.println("Note: " + note + "."));
    return text.toString();
  }

  private static TextTable hours(Report report) {
    TextTable table =
        new TextTable(
            "Hot end",
            ">Hot h",
            ">Printing h",
            ">Filament m",
            ">Idle h",
            ">Bridged h",
            ">Unobserved h",
            ">Swaps",
            ">Jams",
            ">Costs " + report.currency());
    for (Report.OfHotEnd hotEnd : report.hotEnds()) {
      table.row(
          hotEnd.name(),
          Shown.tenths(hotEnd.hotHours()),
          Shown.tenths(hotEnd.printingHours()),
          Shown.tenths(hotEnd.filamentMetres()),
          Shown.hours(hotEnd.total().idleSeconds()),
          Shown.hours(hotEnd.total().bridgedSeconds()),
          Shown.hours(hotEnd.total().unobservedSeconds()),
          String.valueOf(hotEnd.swaps().size()),
          String.valueOf(hotEnd.jams()),
          hotEnd.costs().total().toPlainString());
    }
    return table;
  }

  private static TextTable bands(Report report) {
    TextTable table = new TextTable("Hot end", "Band °C", ">Hot h");
    for (Report.OfHotEnd hotEnd : report.hotEnds()) {
      hotEnd
          .total()
          .hotSeconds()
          .forEach((band, seconds) -> table.row(hotEnd.name(), band, Shown.hours(seconds)));
    }
    return table;
  }

  private static TextTable swaps(Report report) {
    TextTable table =
        new TextTable(
            "When",
            "Hot end",
            "Part",
            "Kind",
            "Because",
            ">After h",
            ">Costs " + report.currency());
    for (Report.OfHotEnd hotEnd : report.hotEnds()) {
      for (Report.Swap swap : hotEnd.swaps()) {
        table.row(
            Shown.time(swap.at(), report),
            hotEnd.name(),
            swap.part(),
            swap.kind(),
            Shown.because(swap),
            Shown.tenths(swap.hotHours()),
            swap.costs().total().toPlainString());
      }
    }
    return table;
  }
}
