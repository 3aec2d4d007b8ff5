package meltkeeper.cli.report;

import java.util.Locale;
import meltkeeper.desk.AnswerJson;
import meltkeeper.desk.Report;

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

  /** The whole text, its last line ended. */
  public String print(Report report) {
    return switch (this) {
      case TEXT -> ReportText.print(report);
      case CSV -> ReportCsv.print(report);
      case JSON -> AnswerJson.print(report) + "\n";
      case HTML -> ReportPage.print(report);
    };
  }

  /** The word used in commands. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
