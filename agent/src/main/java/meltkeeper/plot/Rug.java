package meltkeeper.plot;

import java.util.List;

/**
 * Events of one sort, each a small sign in a lane of its own between the curve and the x axis.
 *
 * @param name as the legend calls them
 * @param sign by which they are told from those of another rug
 * @param at where they happened, in units of x; may be empty
 */
public record Rug(String name, Sign sign, List<Double> at) {

  /** The shape of an event. */
  public enum Sign {
    /** Two crossed strokes, for an end such as a failure. */
    CROSS,
    /** One upright stroke, for a state such as alive. */
    BAR
  }

  public Rug {
    Check.text("a rug's name", name);
    at = List.copyOf(at);
    for (double x : at) {
      Check.number("an event of rug \"" + name + "\"", x);
    }
  }
}
