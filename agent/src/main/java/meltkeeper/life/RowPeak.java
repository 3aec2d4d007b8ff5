package meltkeeper.life;

/**
 * Where a row has its peak, and how wide it is there: the maximum over u of −(u − m)²/(2 s²) − r β
 * u − exp(log S − β u), by Lambert's W: u = m − r β s² + y/β with y + log y = log(β² s² S) − β (m −
 * r β s²). Exact where no past is uncertain.
 */
record RowPeak(double logLife, double spread) {

  static RowPeak of(double priorMean, double priorSpread, LifeLikelihood.Section section) {
    double shape = section.shape();
    double variance = priorSpread * priorSpread;
    double base = priorMean - section.failures() * shape * variance;
    double y = withLogSum(2 * Math.log(shape * priorSpread) + section.logPowers() - shape * base);
    return new RowPeak(base + y / shape, priorSpread / Math.sqrt(1 + y));
  }

  /** The y whose y + log y is that: Newton on w = log y, from above. */
  private static double withLogSum(double sum) {
    if (sum == Double.NEGATIVE_INFINITY) {
      return 0;
    }
    double w = sum > 1 ? Math.log(sum) : sum;
    for (int i = 0; i < 50; i++) {
      double y = Math.exp(w);
      double step = (y + w - sum) / (y + 1);
      w -= step;
      if (Math.abs(step) < 1e-15 * (1 + Math.abs(w))) {
        break;
      }
    }
    return Math.exp(w);
  }
}
