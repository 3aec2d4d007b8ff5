package meltkeeper.plot;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/** Plots of an invented shop; every contract is checked on each of them. */
final class Samples {

  private static final Words WORDS = new Words("Sample", "A sample, described.");

  private Samples() {}

  static Map<String, Plot> all() {
    Map<String, Plot> all = new LinkedHashMap<>();
    all.put("survival", survival());
    all.put("four-lines", fourLines());
    all.put("one-line", oneLine());
    all.put("flat", flat());
    all.put("bands", hoursByBand());
    all.put("printers", hoursByPrinter());
    all.put("idle-shop", BarPlot.of(WORDS, hours(), List.of(new Bar("heron", 0))));
    all.put("gauge-young", new Gauge(WORDS, 210, 180, 250, 620));
    all.put("gauge-due", new Gauge(WORDS, 560, 450, 700, 620));
    all.put("gauge-over", new Gauge(WORDS, 700, 600, 1900, 620));
    all.put("gauge-new", new Gauge(WORDS, 0, 0, 40, 620));
    return all;
  }

  /** Weibull survival of a liner with its 90 % range, its endings and the advised age. */
  static LinePlot survival() {
    double[] x = IntStream.rangeClosed(0, 60).mapToDouble(i -> 20 * i).toArray();
    return LinePlot.of(
            new Words(
                "How long liners last",
                "Half of the liners last 600 reference hours; the advised age is 430."),
            Axis.of("Reference hours", "h at 220 °C"),
            Axis.of("Still good", "%").reaching(0, 100),
            Line.of("expected", x, weibull(x, 690, 2.6)))
        .with(Band.of("90 % range", x, weibull(x, 590, 2.3), weibull(x, 800, 2.9)))
        .with(new Rug("failed (5)", Rug.Sign.CROSS, List.of(402.0, 515.0, 610.0, 618.0, 905.0)))
        .with(new Rug("alive (7)", Rug.Sign.BAR, List.of(40., 60., 210., 320., 330., 480., 760.)))
        .with(new Mark(430, "replace at 430 h"));
  }

  private static double[] weibull(double[] x, double life, double shape) {
    return DoubleStream.of(x).map(t -> 100 * Math.exp(-Math.pow(t / life, shape))).toArray();
  }

  private static LinePlot fourLines() {
    double[] x = IntStream.rangeClosed(0, 40).mapToDouble(i -> 25 * i).toArray();
    return LinePlot.of(
        new Words("Cost by replacement age", "Cheapest is about 400 hours for the heron."),
        Axis.of("Replacement age", "h"),
        Axis.of("Cost", "EUR per 1,000 h").reaching(0),
        cost("heron, 215 °C", x, 9000, 3),
        cost("ibis, 230 °C", x, 12000, 8),
        cost("egret & the rest", x, 15000, 16),
        cost("the shop's habit", x, 20000, 24));
  }

  private static Line cost(String name, double[] x, double planned, double failure) {
    double[] y = DoubleStream.of(x).map(t -> planned / (t + 100) + failure * t / 100).toArray();
    return Line.of(name, x, y);
  }

  private static LinePlot oneLine() {
    double[] x = {-30, -20, -10, 0};
    double[] y = {0.0012, 0.0018, 0.0011, -0.0004};
    return LinePlot.of(
            WORDS, Axis.of("Days ago", "d"), Axis.of("Evidence", ""), Line.of("evidence", x, y))
        .with(new Mark(0, "now, and a label at the very edge"));
  }

  private static LinePlot flat() {
    return LinePlot.of(
        WORDS,
        Axis.of("Hours", "h"),
        Axis.of("Alerts", ""),
        Line.of("alerts", new double[] {0, 24}, new double[] {0, 0}));
  }

  private static BarPlot hoursByBand() {
    List<Bar> bars =
        IntStream.rangeClosed(0, 9)
            .mapToObj(
                i -> band(195 + 5 * i, new double[] {.3, 2, 9, 41, 312, 188, 61, 4, 96, 12}[i]))
            .toList();
    return BarPlot.of(
        new Words("Hot hours by temperature", "Most of 725 hours lay between 215 and 225 °C."),
        hours(),
        bars,
        new BarPlot.Key("printing", "hot, but idle"));
  }

  private static Bar band(int celsius, double hours) {
    return new Bar(celsius + "–" + (celsius + 5) + " °C", hours, hours * (celsius % 3) / 6);
  }

  private static BarPlot hoursByPrinter() {
    return BarPlot.of(
        new Words("Hot hours by printer", "The heron ran longest."),
        hours(),
        List.of(
            new Bar("heron", 412.25),
            new Bar("the great crested grebe by the window", 88.5),
            new Bar("<b>ibis</b> & \"egret\"", 0)));
  }

  private static Axis hours() {
    return Axis.of("Hot hours", "h");
  }
}
