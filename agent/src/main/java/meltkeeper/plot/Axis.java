package meltkeeper.plot;

import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * What an axis measures. Its range follows from the data, rounded outwards to the ticks.
 *
 * @param title what is measured
 * @param unit its unit, blank for a bare number
 * @param reaches values that must be on the axis whatever the data say, such as 0
 */
public record Axis(String title, String unit, List<Double> reaches) {

  public Axis {
    Check.text("an axis' title", title);
    reaches = List.copyOf(reaches);
    for (double value : reaches) {
      Check.number("a value that axis \"" + title + "\" must reach", value);
    }
  }

  /** An axis as wide as its data. */
  public static Axis of(String title, String unit) {
    return new Axis(title, unit, List.of());
  }

  /** This axis, wide enough to show the given values too. */
  public Axis reaching(double... values) {
    return new Axis(title, unit, Arrays.stream(values).boxed().toList());
  }

  /** Title and unit as printed. */
  String heading() {
    return unit.isBlank() ? title : title + " (" + unit + ")";
  }

  /** The data and all that the axis must reach. */
  DoubleStream with(DoubleStream data) {
    return DoubleStream.concat(data, reaches.stream().mapToDouble(Double::doubleValue));
  }
}
