package meltkeeper.cli.report;

import java.util.Locale;
import java.util.Map;
import java.util.function.Supplier;
import meltkeeper.desk.AnswerJson;
import meltkeeper.desk.Report;
import meltkeeper.outlook.KindCurves;

/** What a report may be printed as. */
public enum ReportFormat {
  /** Tables for people. */
  TEXT,
  /** One row a hot end, for spreadsheets; RFC 4180. */
  CSV,
  /** One object, the whole report. */
  JSON,
  /** A page that stands alone. */
  HTML;

  /**
   * The whole text, its last line ended.
   *
   * @param curves asked for only by a form that draws them
   */
  public String print(Report report, Supplier<Map<String, KindCurves>> curves) {
    return switch (this) {
      case TEXT -> ReportText.print(report);
      case CSV -> ReportCsv.print(report);
      case JSON -> AnswerJson.print(report) + "\n";
      case HTML -> ReportPage.print(report, curves.get());
    };
  }

  /** The word used in commands. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
