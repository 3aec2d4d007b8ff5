package meltkeeper.cli.report;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.Map;
import meltkeeper.desk.Report;
import meltkeeper.outlook.KindCurves;
import meltkeeper.plot.PlotStyle;
import meltkeeper.web.page.LifePlots;

/**
 * A report as a page that stands alone.
 *
 * @param report what it shows
 * @param curves of each kind that has parts, by name
 */
public record ReportPage(Report report, Map<String, KindCurves> curves) {

  static String print(Report report, Map<String, KindCurves> curves) {
    StringOutput html = new StringOutput();
    TemplateEngine.createPrecompiled(ContentType.Html)
        .render("report.jte", new ReportPage(report, curves), html);
    return html.toString();
  }

  /** The stylesheet of the plots. */
  public String plotStyle() {
    return PlotStyle.CSS;
  }

  /** How many parts of a kind are alive at each age, as SVG. */
  public String survival(String kind, KindCurves of) {
    return LifePlots.survival(kind, of);
  }

  /** What replacing parts of a kind at each age costs, as SVG. */
  public String cost(String kind, KindCurves of) {
    return LifePlots.cost(kind, of, report.currency());
  }

  /** Hot hours of a hot end by temperature, as SVG. */
  public String hoursByTemperature(Report.OfHotEnd hotEnd) {
    return LifePlots.hours(hotEnd.name(), hotEnd.total().hotSeconds());
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
