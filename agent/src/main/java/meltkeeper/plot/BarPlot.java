package meltkeeper.plot;

import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;

/**
 * Bars lying under each other, each with its label before it and its value after it.
 *
 * @param words its text alternative
 * @param measure what the bars measure; the longest bar, or what the axis must reach, fills the
 *     width
 * @param bars 1 to 200, from the top
 * @param key what solid and hatched mean; needed once a bar is hatched
 */
public record BarPlot(Words words, Axis measure, List<Bar> bars, Optional<Key> key)
    implements Plot {

  /**
   * The two parts of a bar by name.
   *
   * @param solid the plain part
   * @param hatched the hatched part
   */
  public record Key(String solid, String hatched) {

    public Key {
      Check.text("the name of the solid part", solid);
      Check.text("the name of the hatched part", hatched);
    }
  }

  public BarPlot {
    bars = List.copyOf(bars);
    Check.count("the bars of plot \"" + words.title() + "\"", bars, 1, 200);
    if (key.isEmpty() && bars.stream().anyMatch(bar -> bar.hatched() > 0)) {
      throw new IllegalArgumentException(
          "plot \"" + words.title() + "\" has hatched bars and no key; say what hatched means");
    }
  }

  /** Solid bars. */
  public static BarPlot of(Words words, Axis measure, List<Bar> bars) {
    return new BarPlot(words, measure, bars, Optional.empty());
  }

  /** Bars of two parts. */
  public static BarPlot of(Words words, Axis measure, List<Bar> bars, Key key) {
    return new BarPlot(words, measure, bars, Optional.of(key));
  }

  @Override
  public String svg() {
    return BarDrawing.of(this).svg();
  }

  /** The value that fills the width; 1 where all are zero. */
  double widest() {
    double most = measure.with(values()).max().orElse(0);
    return most > 0 ? most : 1;
  }

  DoubleStream values() {
    return bars.stream().mapToDouble(Bar::value);
  }
}
