package meltkeeper.plot;

/**
 * One bar.
 *
 * @param label what it stands for
 * @param value its length, not negative
 * @param hatched how much of it is hatched, from its far end; at most the value
 */
public record Bar(String label, double value, double hatched) {

  public Bar {
    Check.text("a bar's label", label);
    Check.notNegative("bar \"" + label + "\"", value);
    Check.notNegative("the hatched part of bar \"" + label + "\"", hatched);
    if (hatched > value) {
      throw new IllegalArgumentException(
          "the hatched part of bar \""
              + label
              + "\" is "
              + hatched
              + " of "
              + value
              + "; allowed is at most the whole");
    }
  }

  /** A bar without hatching. */
  public Bar(String label, double value) {
    this(label, value, 0);
  }
}
