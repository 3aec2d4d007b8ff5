package meltkeeper.demo;

import java.util.NavigableMap;

/**
 * What a simulated printer really did so far.
 *
 * @param hotSecondsByBand by the band's lower edge, °C: the curve of its sensor at every step
 * @param fedMillimetres rise of the commanded total's high-water mark
 * @param deliveredMillimetres what reached the melt of it
 * @param printingSeconds with the job's state at printing
 */
public record Truth(
    NavigableMap<Integer, Double> hotSecondsByBand,
    double fedMillimetres,
    double deliveredMillimetres,
    double printingSeconds) {

  public double hotSeconds() {
    return hotSecondsByBand.values().stream().mapToDouble(Double::doubleValue).sum();
  }
}
