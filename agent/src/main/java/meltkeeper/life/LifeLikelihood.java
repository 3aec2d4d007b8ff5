package meltkeeper.life;

import java.util.ArrayList;
import java.util.List;

/**
 * The likelihood of many parts under one opinion of ageing, as a function of shape and life. A
 * failure counts as a density in clock hours: log f = v + (β − 1) log A − β u + log dA/dt − Λ. A
 * part with a past entered late (left truncation), and an uncertain past is integrated out.
 */
final class LifeLikelihood {

  /** A failure before the first hot minute counts as one at that minute, reference hours. */
  private static final double EARLIEST = 1.0 / 60;

  private final SpellEnds spells = new SpellEnds();
  private final List<LateEntry> lateEntries = new ArrayList<>();
  private int failures;
  private double logAges;
  private double logRates;

  LifeLikelihood(List<PartLife> parts, Ageing ageing) {
    for (PartLife part : parts) {
      PastBelief past = PastBelief.of(part);
      if (past.size() > 1) {
        lateEntries.add(new LateEntry(part, past, ageing));
      } else {
        double before = ageing.pastHours(part.past(), past.hours(0));
        spells.add(part, ageing, before);
        ageing.failures(
            part,
            before,
            (age, rate) -> {
              failures++;
              logAges += Math.log(Math.max(age, EARLIEST));
              logRates += Math.log(rate);
            });
      }
    }
  }

  /** The likelihood at one shape, as a function of life alone. */
  Section at(double logShape) {
    return new Section(logShape);
  }

  /** One part whose past is uncertain. */
  private static final class LateEntry {
    final PastBelief past;
    final SpellEnds[] spells;
    final double[] logAges;
    final int failures;
    double logRate;

    LateEntry(PartLife part, PastBelief past, Ageing ageing) {
      this.past = past;
      this.spells = new SpellEnds[past.size()];
      this.logAges = new double[past.size()];
      this.failures = part.failures();
      for (int k = 0; k < past.size(); k++) {
        int node = k;
        double before = ageing.pastHours(part.past(), past.hours(k));
        spells[k] = new SpellEnds();
        spells[k].add(part, ageing, before);
        logRate = 0;
        ageing.failures(
            part,
            before,
            (age, rate) -> {
              logAges[node] += Math.log(Math.max(age, EARLIEST));
              logRate += Math.log(rate);
            });
      }
    }
  }

  /** Along log life. */
  final class Section {
    private final double shape;
    private final double constant;
    private final double logPowers;
    private final double[][] latePowers;
    private final double[][] lateConstants;

    private Section(double logShape) {
      this.shape = Math.exp(logShape);
      this.logPowers = spells.logPowers(shape);
      this.latePowers = new double[lateEntries.size()][];
      this.lateConstants = new double[lateEntries.size()][];
      double sum = failures * logShape + (shape - 1) * logAges + logRates;
      for (int i = 0; i < latePowers.length; i++) {
        LateEntry entry = lateEntries.get(i);
        latePowers[i] = new double[entry.past.size()];
        lateConstants[i] = new double[entry.past.size()];
        for (int k = 0; k < latePowers[i].length; k++) {
          latePowers[i][k] = entry.spells[k].logPowers(shape);
          lateConstants[i][k] = Math.log(entry.past.weight(k)) + (shape - 1) * entry.logAges[k];
        }
        sum += entry.failures * logShape + entry.logRate;
      }
      this.constant = sum;
    }

    /** Failures in it. */
    int failures() {
      return failures + lateEntries.stream().mapToInt(e -> e.failures).sum();
    }

    /**
     * log of the sum that Λ = exp(it − β u) is made of, uncertain pasts at the middle of belief.
     */
    double logPowers() {
      double sum = logPowers;
      for (double[] powers : latePowers) {
        sum = LogSum.of(sum, powers[powers.length / 2]);
      }
      return sum;
    }

    double logLikelihood(double logLife) {
      double fall = shape * logLife;
      double sum = constant - failures() * fall - Math.exp(logPowers - fall);
      for (int i = 0; i < latePowers.length; i++) {
        double inner = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < latePowers[i].length; k++) {
          inner = LogSum.of(inner, lateConstants[i][k] - Math.exp(latePowers[i][k] - fall));
        }
        sum += inner;
      }
      return sum;
    }

    double shape() {
      return shape;
    }
  }
}
