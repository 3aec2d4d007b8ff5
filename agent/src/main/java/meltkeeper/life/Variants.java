package meltkeeper.life;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import meltkeeper.part.Belief;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * Partial pooling: each variant's log life is its kind's plus an offset, normal with a spread τ
 * that is itself unknown, half-normal with scale 0.3. Shape and halving interval are common. Parts
 * without a variant are the kind itself.
 *
 * @param variants in order of their names
 * @param probabilityDifferent that variants typically differ by more than a tenth in life (τ above
 *     0.1)
 * @param believedDifferent the same before any part spoke
 */
public record Variants(
    List<VariantLife> variants, double probabilityDifferent, double believedDifferent) {

  private static final double SCALE = 0.3;
  private static final double REACH = 3;
  private static final int SPREADS = 8;
  private static final double NOTABLE = 0.1;

  public Variants {
    variants = List.copyOf(variants);
  }

  /** What the parts say; empty when none of them has a variant. */
  public static Optional<Variants> of(Belief belief, List<PartLife> parts) {
    Map<String, List<PartLife>> byVariant = new TreeMap<>();
    List<PartLife> plain = new ArrayList<>();
    for (PartLife part : Posterior.sorted(parts)) {
      part.variant()
          .map(name -> byVariant.computeIfAbsent(name, n -> new ArrayList<>()))
          .orElse(plain)
          .add(part);
    }
    return byVariant.isEmpty() ? Optional.empty() : Optional.of(learned(belief, plain, byVariant));
  }

  private static Variants learned(
      Belief belief, List<PartLife> plain, Map<String, List<PartLife>> byVariant) {
    List<List<PartLife>> groups = List.copyOf(byVariant.values());
    VariantQuadrature quadrature = new VariantQuadrature(belief, plain, groups);
    List<VariantQuadrature.AtSpread> atSpreads = new ArrayList<>();
    double[] logPriors = new double[2 * SPREADS];
    double[] logs = new double[2 * SPREADS];
    double believed = 0;
    for (int half = 0; half < 2; half++) {
      GaussIntegrator rule =
          new GaussIntegratorFactory()
              .legendre(SPREADS, half == 0 ? 0 : NOTABLE, half == 0 ? NOTABLE : REACH * SCALE);
      for (int i = 0; i < SPREADS; i++) {
        double spread = rule.getPoint(i);
        int at = half * SPREADS + i;
        logPriors[at] = Math.log(2 * rule.getWeight(i)) + Prior.normal(spread, 0, SCALE);
        believed += half * Math.exp(logPriors[at]);
        atSpreads.add(quadrature.integrate(spread));
        logs[at] = logPriors[at] + atSpreads.get(at).logEvidence();
      }
    }
    double all = LogSum.of(logs);
    double different = 0;
    for (int i = SPREADS; i < logs.length; i++) {
      different += Math.exp(logs[i] - all);
    }
    List<VariantLife> lives = new ArrayList<>();
    for (String name : byVariant.keySet()) {
      int group = lives.size();
      double longer = 0;
      for (int i = 0; i < logs.length; i++) {
        longer += Math.exp(logs[i] - all) * atSpreads.get(i).probabilityLonger(group);
      }
      Posterior posterior =
          new Posterior(
              belief,
              groups.get(group),
              atSpreads.stream().map(at -> at.component(group)).toList(),
              logPriors);
      lives.add(
          new VariantLife(
              name,
              posterior.parts().size(),
              posterior.failures(),
              posterior.lifeHours(),
              longer,
              posterior));
    }
    return new Variants(lives, different, believed);
  }
}
