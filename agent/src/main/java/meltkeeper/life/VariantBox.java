package meltkeeper.life;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import meltkeeper.part.Belief;

/** Where shape and halving interval lie when each group of parts has a life of its own. */
final class VariantBox {

  private final Belief belief;
  private final Prior prior;
  private final List<List<PartLife>> groups;
  private final Map<Double, List<LifeLikelihood>> byHalving = new HashMap<>();

  VariantBox(Belief belief, List<List<PartLife>> groups) {
    this.belief = belief;
    this.prior = new Prior(belief);
    this.groups = groups;
  }

  Box found() {
    return Box.of(belief).around(this::roughly);
  }

  private double roughly(double logShape, double halving) {
    double sum = prior.ofLogShape(logShape) + prior.ofHalving(halving);
    List<LifeLikelihood> likelihoods =
        byHalving.computeIfAbsent(
            halving,
            h ->
                groups.stream()
                    .map(p -> new LifeLikelihood(p, Ageing.byHeatAlone(belief.atCelsius(), h)))
                    .toList());
    for (LifeLikelihood likelihood : likelihoods) {
      LifeLikelihood.Section section = likelihood.at(logShape);
      RowPeak peak = RowPeak.of(prior.logLifeMean(), belief.spread(), section);
      sum +=
          section.logLikelihood(peak.logLife())
              + prior.ofLogLife(peak.logLife())
              + Math.log(peak.spread());
    }
    return sum;
  }
}
