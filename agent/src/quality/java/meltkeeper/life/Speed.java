package meltkeeper.life;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.IntSupplier;
import meltkeeper.part.Exposure;

/**
 * Prints the processor time that the whole answer of {@code life} takes for some numbers of parts,
 * as a multiple of the maximum-likelihood fit of the same parts in the same run.
 */
public final class Speed {

  private static final int WARM_UP = 10;
  private static final int ROUNDS = 15;

  /** Processor time, so that what else the machine does hardly matters. */
  private static final ThreadMXBean PROCESSOR = ManagementFactory.getThreadMXBean();

  private Speed() {}

  public static void main(String[] arguments) {
    System.out.println("| parts | fit, ms | posterior, ms | whole answer, ms | answer / fit |");
    System.out.println("|---|---|---|---|---|");
    int used = 0;
    for (int count : new int[] {10, 100, 1000}) {
      List<PartLife> parts = PosteriorPropertyTest.shop(count, 3);
      List<Observation> rows = rows(parts);
      ReplacementCosts costs = new ReplacementCosts(10.75, 28.75);
      double fit = millis(() -> LifeRegression.onCovariate(Family.WEIBULL, rows).fit().hashCode());
      double posterior = millis(() -> Posterior.of(Lives.LINER, parts).failures());
      double answer =
          millis(
              () ->
                  KindLife.of(Posterior.of(Lives.LINER, parts), costs, Optional.empty())
                      .failures());
      System.out.printf(
          Locale.ROOT,
          "| %d | %.2f | %.0f | %.0f | %.0f |%n",
          count,
          fit,
          posterior,
          answer,
          answer / fit);
      used += rows.size();
    }
    System.out.printf(Locale.ROOT, "%d rows fitted%n", used);
  }

  private static List<Observation> rows(List<PartLife> parts) {
    List<Observation> rows = new ArrayList<>();
    for (PartLife part : parts) {
      Exposure hot = part.spells().get(0).hot();
      double above = hot.bands().firstEntry().getValue().meanCelsius() - 220;
      rows.add(
          part.hasFailed()
              ? new Observation.Failed(hot.hotHours(), above, 1)
              : new Observation.Survived(hot.hotHours(), above, 1));
    }
    return rows;
  }

  /** The middle of some rounds, after others that let the machine warm up. */
  private static double millis(IntSupplier work) {
    int seen = 0;
    double[] rounds = new double[ROUNDS];
    for (int i = -WARM_UP; i < ROUNDS; i++) {
      long start = PROCESSOR.getCurrentThreadCpuTime();
      seen += work.getAsInt();
      rounds[Math.max(i, 0)] = (PROCESSOR.getCurrentThreadCpuTime() - start) / 1e6;
    }
    Arrays.sort(rounds);
    return seen == Integer.MIN_VALUE ? 0 : rounds[ROUNDS / 2];
  }
}
