package meltkeeper.life;

import java.util.function.DoubleUnaryOperator;
import meltkeeper.part.Exposure;

/**
 * P(the part fails within a batch | alive now). On the scale −log(−log(1 − p)) it is a straight
 * line in log life where no past is uncertain: −log(Δ Λ) = β u − log((A + d)^β − A^β).
 */
final class FailureMeasure implements Measure {

  private final PartLife part;
  private final PastBelief past;
  private final Exposure batch;
  private final double times;

  FailureMeasure(PartLife part, Exposure batch) {
    this(part, batch, 1);
  }

  /** A batch that repeats {@code batch} so many times, 0 or more, not necessarily whole. */
  FailureMeasure(PartLife part, Exposure batch, double times) {
    this.part = part;
    this.past = PastBelief.of(part);
    this.batch = batch;
    this.times = times;
  }

  @Override
  public DoubleUnaryOperator on(Row row) {
    Ageing ageing = row.ageing();
    double more = times * ageing.hours(batch);
    double shape = row.shape();
    if (past.size() == 1) {
      double age = ageing.age(part, ageing.pastHours(part.past(), past.hours(0)));
      double logRise = logRise(age, more, shape);
      return logLife -> shape * logLife - logRise;
    }
    return uncertain(ageing, more, shape);
  }

  /** A past that is uncertain is less so once the part has come this far: long ones thin out. */
  private DoubleUnaryOperator uncertain(Ageing ageing, double more, double shape) {
    double[] logSoFar = new double[past.size()];
    double[] logRises = new double[past.size()];
    for (int k = 0; k < past.size(); k++) {
      double before = ageing.pastHours(part.past(), past.hours(k));
      SpellEnds spells = new SpellEnds();
      double age = spells.add(part, ageing, before);
      logSoFar[k] = spells.logPowers(shape);
      logRises[k] = logRise(age, more, shape);
    }
    return logLife -> {
      double alive = 0;
      double fails = 0;
      for (int k = 0; k < past.size(); k++) {
        double weight = past.weight(k) * Math.exp(-Math.exp(logSoFar[k] - shape * logLife));
        alive += weight;
        fails -= weight * Math.expm1(-Math.exp(logRises[k] - shape * logLife));
      }
      return alive > 0 ? -Math.log(-Math.log1p(-fails / alive)) : shape * logLife - logRises[0];
    };
  }

  /** log((age + more)^β − age^β), without cancellation. */
  static double logRise(double age, double more, double shape) {
    if (!(age > 0)) {
      return shape * Math.log(more);
    }
    double growth = shape * Math.log1p(more / age);
    return shape * Math.log(age) + (growth > 30 ? growth : Math.log(Math.expm1(growth)));
  }

  @Override
  public double value(double rising) {
    return -Math.expm1(-Math.exp(-rising));
  }
}
