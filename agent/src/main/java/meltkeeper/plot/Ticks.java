package meltkeeper.plot;

import java.math.BigDecimal;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.LongStream;

/**
 * Round numbers along an axis, a step of 1, 2 or 5 times a power of ten apart, the first at or
 * below the data and the last at or above them.
 *
 * <p>Source: Heckbert, "Nice numbers for graph labels", Graphics Gems, 1990, the loose labelling
 * (cited from memory). The ticks are decimal numbers, so that 3 · 0.1 is printed as 0.3.
 *
 * @param values rising, at least two
 */
record Ticks(List<BigDecimal> values) {

  private static final double SLACK = 1e-9;

  Ticks {
    values = List.copyOf(values);
  }

  /** Ticks over the data, at most two more than wanted; 0 to 1 where there are none. */
  static Ticks over(DoubleStream data, int wanted) {
    DoubleSummaryStatistics range = data.summaryStatistics();
    return range.getCount() == 0 ? between(0, 0, wanted) : between(range, wanted);
  }

  private static Ticks between(DoubleSummaryStatistics range, int wanted) {
    return between(range.getMin(), range.getMax(), wanted);
  }

  /** Ticks from at or below the first to at or above the second; a range of no width is widened. */
  static Ticks between(double least, double most, int wanted) {
    double size = Math.max(Math.abs(least), Math.abs(most));
    if (most - least > Math.max(size * SLACK, 1e-12)) {
      return spread(least, most, wanted);
    }
    return size > 1e-12 ? spread(least - size / 2, most + size / 2, wanted) : spread(0, 1, wanted);
  }

  private static Ticks spread(double least, double most, int wanted) {
    double span = Nice.atLeast(most - least).value();
    Nice step = Nice.near(span / (wanted - 1));
    long first = (long) Math.floor(least / step.value() + SLACK);
    long last = (long) Math.ceil(most / step.value() - SLACK);
    return new Ticks(LongStream.rangeClosed(first, last).mapToObj(step::times).toList());
  }

  double first() {
    return values.get(0).doubleValue();
  }

  double last() {
    return values.get(values.size() - 1).doubleValue();
  }

  /** One per value, all with the same digits after the point. */
  List<String> labels() {
    return values.stream().map(Digits::tick).toList();
  }

  /** A round number: 1, 2 or 5 times a power of ten. */
  private record Nice(int digit, int power) {

    static Nice atLeast(double value) {
      int power = powerOf(value);
      double lead = value / Math.pow(10, power);
      return new Nice(lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 5 ? 5 : 10, power);
    }

    static Nice near(double value) {
      int power = powerOf(value);
      double lead = value / Math.pow(10, power);
      return new Nice(lead < 1.5 ? 1 : lead < 3 ? 2 : lead < 7 ? 5 : 10, power);
    }

    private static int powerOf(double value) {
      return (int) Math.floor(Math.log10(value));
    }

    double value() {
      return times(1).doubleValue();
    }

    BigDecimal times(long factor) {
      BigDecimal product = BigDecimal.valueOf(digit == 10 ? factor : factor * digit);
      BigDecimal scaled = product.scaleByPowerOfTen(digit == 10 ? power + 1 : power);
      return scaled.scale() < 0 ? scaled.setScale(0) : scaled;
    }
  }
}
