package meltkeeper.web.page;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import meltkeeper.life.Estimate;
import meltkeeper.outlook.KindCurves;
import meltkeeper.plot.Axis;
import meltkeeper.plot.Band;
import meltkeeper.plot.Bar;
import meltkeeper.plot.BarPlot;
import meltkeeper.plot.Line;
import meltkeeper.plot.LinePlot;
import meltkeeper.plot.Mark;
import meltkeeper.plot.Rug;
import meltkeeper.plot.Words;

/** The plots of what is learned and counted, for page and report. */
public final class LifePlots {

  private static final double SECONDS_AN_HOUR = 3600;

  /** Young ages cost many times the best one; higher than this the curve says no more. */
  private static final double HIGHEST_COST = 4;

  private LifePlots() {}

  /** How many parts are alive at each age, with the shop's own parts below. */
  public static String survival(String kind, KindCurves curves) {
    double[] ages = across(curves);
    double[] alive = upward(curves, Estimate::mean);
    LinePlot plot =
        LinePlot.of(
                new Words(
                    "Parts alive by age: " + kind,
                    String.format(
                        Locale.ROOT,
                        "Half of the parts of kind %s are expected to be alive at about %.0f h of"
                            + " age, reference hours at %.0f °C. %s",
                        kind,
                        half(curves),
                        curves.referenceTemperature(),
                        advised(curves))),
                Axis.of("Age", ageUnit(curves)),
                new Axis("Alive", "%", List.of(0.0, 100.0)),
                Line.of("expected", ages, alive))
            .with(
                Band.of(
                    "90 % range",
                    ages, upward(curves, Estimate::p5), upward(curves, Estimate::p95)))
            .with(new Rug("failed", Rug.Sign.CROSS, ticks(curves, true)))
            .with(new Rug("did not fail", Rug.Sign.BAR, ticks(curves, false)));
    return marked(plot, curves).svg();
  }

  /** What replacing at each age costs. */
  public static String cost(String kind, KindCurves curves, String currency) {
    double least = curves.costPer1000Hours().stream().mapToDouble(c -> c).min().orElse(0);
    List<Double> ages = new ArrayList<>();
    List<Double> costs = new ArrayList<>();
    for (int i = 0; i < curves.ages().size(); i++) {
      if (curves.costPer1000Hours().get(i) <= HIGHEST_COST * least) {
        ages.add(curves.ages().get(i));
        costs.add(curves.costPer1000Hours().get(i));
      }
    }
    LinePlot plot =
        LinePlot.of(
            new Words(
                "Cost by age of replacement: " + kind,
                String.format(
                    Locale.ROOT,
                    "The cheapest age costs %.2f %s per 1000 h. %s",
                    least,
                    currency,
                    advised(curves))),
            Axis.of("Replaced at", ageUnit(curves)).reaching(0),
            Axis.of("Cost per 1000 h", currency).reaching(0),
            Line.of(
                "cost",
                ages.stream().mapToDouble(a -> a).toArray(),
                costs.stream().mapToDouble(c -> c).toArray()));
    return marked(plot, curves).svg();
  }

  /** Hot hours by band. */
  public static String hours(String name, Map<String, BigDecimal> hotSeconds) {
    List<Bar> bars =
        hotSeconds.entrySet().stream()
            .map(e -> new Bar(e.getKey() + " °C", e.getValue().doubleValue() / SECONDS_AN_HOUR))
            .toList();
    return BarPlot.of(
            new Words(
                "Hot hours by temperature: " + name, "The table before it holds the same figures."),
            Axis.of("Hot time", "h"),
            bars)
        .svg();
  }

  private static LinePlot marked(LinePlot plot, KindCurves curves) {
    return curves.replaceAt().isPresent()
        ? plot.with(
            new Mark(
                curves.replaceAt().getAsDouble(),
                String.format(Locale.ROOT, "replace at %.0f h", curves.replaceAt().getAsDouble())))
        : plot;
  }

  private static String ageUnit(KindCurves curves) {
    return String.format(Locale.ROOT, "h at %.0f °C", curves.referenceTemperature());
  }

  private static String advised(KindCurves curves) {
    return curves.replaceAt().isPresent()
        ? String.format(Locale.ROOT, "The advised age is %.0f h.", curves.replaceAt().getAsDouble())
        : "Waiting for the failure is cheapest.";
  }

  private static double half(KindCurves curves) {
    for (int i = 0; i < curves.ages().size(); i++) {
      if (curves.alive().get(i).mean() <= 0.5) {
        return curves.ages().get(i);
      }
    }
    return curves.ages().get(curves.ages().size() - 1);
  }

  private static List<Double> ticks(KindCurves curves, boolean failed) {
    return curves.ticks().stream()
        .filter(tick -> tick.failed() == failed)
        .map(KindCurves.Tick::ageHours)
        .toList();
  }

  /** The ages from 0 on; every curve begins there. */
  private static double[] across(KindCurves curves) {
    double[] all = new double[curves.ages().size() + 1];
    for (int i = 1; i < all.length; i++) {
      all[i] = curves.ages().get(i - 1);
    }
    return all;
  }

  private static double[] upward(KindCurves curves, ToDoubleFunction<Estimate> which) {
    double[] all = new double[curves.ages().size() + 1];
    all[0] = 100;
    for (int i = 1; i < all.length; i++) {
      all[i] = 100 * which.applyAsDouble(curves.alive().get(i - 1));
    }
    return all;
  }
}
