package meltkeeper.jam;

/**
 * A linear relation learned one observation at a time: recursive least squares with forgetting, in
 * Kalman's form, so that it also tells how sure it is. Mutable.
 */
final class LinearFit {

  private final double[] coefficients;
  private final double[] covariance;
  private final double[] mostVariance;
  private final double[] gain;

  /**
   * @param prior where each coefficient starts
   * @param spread standard deviation of each about it; forgetting never makes it wider than that
   */
  LinearFit(double[] prior, double[] spread) {
    int size = prior.length;
    coefficients = prior.clone();
    covariance = new double[size * size];
    mostVariance = new double[size];
    gain = new double[size];
    for (int i = 0; i < size; i++) {
      mostVariance[i] = spread[i] * spread[i];
      covariance[i * size + i] = mostVariance[i];
    }
  }

  double coefficient(int index) {
    return coefficients[index];
  }

  double variance(int index) {
    return covariance[index * coefficients.length + index];
  }

  double predict(double[] inputs) {
    double sum = 0;
    for (int i = 0; i < inputs.length; i++) {
      sum += coefficients[i] * inputs[i];
    }
    return sum;
  }

  /** Variance of the prediction, without that of the observation. */
  double uncertainty(double[] inputs) {
    int size = inputs.length;
    double sum = 0;
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < size; j++) {
        sum += inputs[i] * covariance[i * size + j] * inputs[j];
      }
    }
    return Math.max(0, sum);
  }

  /** Learns from a residual, observation less prediction, of an observation of that variance. */
  void learn(double[] inputs, double residual, double variance) {
    int size = inputs.length;
    double total = variance + uncertainty(inputs);
    for (int i = 0; i < size; i++) {
      double sum = 0;
      for (int j = 0; j < size; j++) {
        sum += covariance[i * size + j] * inputs[j];
      }
      gain[i] = sum;
    }
    for (int i = 0; i < size; i++) {
      coefficients[i] += gain[i] / total * residual;
      for (int j = 0; j < size; j++) {
        covariance[i * size + j] -= gain[i] * gain[j] / total;
      }
    }
  }

  /** Lets all grow less sure by a factor above 1 of the variance, one of them by more. */
  void forget(double factor, int index, double addedVariance) {
    int size = coefficients.length;
    covariance[index * size + index] += addedVariance;
    for (int i = 0; i < size; i++) {
      double most = mostVariance[i] / Math.max(1e-300, covariance[i * size + i]);
      double root = Math.sqrt(Math.min(factor, most));
      for (int j = 0; j < size; j++) {
        covariance[i * size + j] *= root;
        covariance[j * size + i] *= root;
      }
    }
  }

  void keep(Memory memory) {
    memory.numbers("coefficient", coefficients);
    memory.numbers("covariance", covariance);
    memory.numbers("mostVariance", mostVariance);
  }
}
