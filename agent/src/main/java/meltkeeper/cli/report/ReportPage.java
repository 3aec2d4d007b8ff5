package meltkeeper.cli.report;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.math.BigDecimal;
import java.time.Instant;
import meltkeeper.desk.Report;

/**
 * A report as a page that stands alone.
 *
 * @param report what it shows
 */
public record ReportPage(Report report) {

  static String print(Report report) {
    StringOutput html = new StringOutput();
    TemplateEngine.createPrecompiled(ContentType.Html)
        .render("report.jte", new ReportPage(report), html);
    return html.toString();
  }

  /** Hours to the tenth. */
  public String hours(BigDecimal seconds) {
    return Shown.hours(seconds);
  }

  /** To the tenth. */
  public String tenths(BigDecimal value) {
    return Shown.tenths(value);
  }

  /** Local date and time in the report's zone. */
  public String time(Instant at) {
    return Shown.time(at, report);
  }

  /** Why a part came off. */
  public String because(Report.Swap swap) {
    return Shown.because(swap);
  }
}
