package meltkeeper.life;

/** log(exp a + exp b) without overflow. */
final class LogSum {

  private LogSum() {}

  static double of(double a, double b) {
    double larger = Math.max(a, b);
    return larger == Double.NEGATIVE_INFINITY
        ? larger
        : larger + Math.log1p(Math.exp(Math.min(a, b) - larger));
  }

  static double of(double[] logs) {
    double largest = Double.NEGATIVE_INFINITY;
    for (double log : logs) {
      largest = Math.max(largest, log);
    }
    if (largest == Double.NEGATIVE_INFINITY) {
      return largest;
    }
    double sum = 0;
    for (double log : logs) {
      sum += Math.exp(log - largest);
    }
    return largest + Math.log(sum);
  }
}
