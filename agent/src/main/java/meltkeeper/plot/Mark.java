package meltkeeper.plot;

/**
 * An upright line over the whole height, with its label above, such as an advised age.
 *
 * @param x where it stands
 * @param label what it says
 */
public record Mark(double x, String label) {

  public Mark {
    Check.text("a mark's label", label);
    Check.number("the place of mark \"" + label + "\"", x);
  }
}
