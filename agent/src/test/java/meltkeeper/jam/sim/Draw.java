package meltkeeper.jam.sim;

import java.util.Random;

/** Random draws in the shapes that the simulator needs. */
record Draw(Random random) {

  static Draw of(long seed) {
    return new Draw(new Random(seed * 0x9E3779B97F4A7C15L + 12345));
  }

  double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  /** Evenly on a logarithmic scale. */
  double scaled(double low, double high) {
    return low * Math.pow(high / low, random.nextDouble());
  }

  double normal(double spread) {
    return spread * random.nextGaussian();
  }

  boolean chance(double share) {
    return random.nextDouble() < share;
  }

  double oneOf(double... values) {
    return values[random.nextInt(values.length)];
  }
}
