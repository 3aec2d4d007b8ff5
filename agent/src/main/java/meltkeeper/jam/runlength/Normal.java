package meltkeeper.jam.runlength;

import org.hipparchus.special.Erf;

/** The standard normal distribution. */
final class Normal {

  private static final double ROOT_TWO = Math.sqrt(2);
  private static final double ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

  private Normal() {}

  static double density(double x) {
    return Math.exp(-x * x / 2) / ROOT_TWO_PI;
  }

  static double below(double x) {
    return Erf.erfc(-x / ROOT_TWO) / 2;
  }
}
