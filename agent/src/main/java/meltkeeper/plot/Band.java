package meltkeeper.plot;

import java.util.ArrayList;
import java.util.List;

/**
 * A shaded band, such as the middle 90 % of what a line may be.
 *
 * @param name as the legend calls it
 * @param slices 2 to 10,000 in the order of x
 */
public record Band(String name, List<Slice> slices) {

  /**
   * The band at one x.
   *
   * @param x across
   * @param low its lower edge
   * @param high its upper edge, not below the lower one
   */
  public record Slice(double x, double low, double high) {

    public Slice {
      Check.number("a band's x", x);
      Check.number("the low edge at x " + x, low);
      Check.number("the high edge at x " + x, high);
      if (high < low) {
        throw new IllegalArgumentException(
            "the band at x " + x + " runs from " + low + " down to " + high + "; give low first");
      }
    }
  }

  public Band {
    Check.text("a band's name", name);
    slices = List.copyOf(slices);
    Check.count("the slices of band \"" + name + "\"", slices, 2, 10_000);
    for (int i = 1; i < slices.size(); i++) {
      Check.order("band \"" + name + "\"", slices.get(i - 1).x(), slices.get(i).x());
    }
  }

  /** The band between {@code (x[i], low[i])} and {@code (x[i], high[i])}. */
  public static Band of(String name, double[] x, double[] low, double[] high) {
    Check.sameLength("the low edge of band \"" + name + "\"", x, low);
    Check.sameLength("the high edge of band \"" + name + "\"", x, high);
    List<Slice> slices = new ArrayList<>();
    for (int i = 0; i < x.length; i++) {
      slices.add(new Slice(x[i], low[i], high[i]));
    }
    return new Band(name, slices);
  }
}
