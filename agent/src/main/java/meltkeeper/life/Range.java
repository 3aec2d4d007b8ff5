package meltkeeper.life;

/** From low to high; the ends may be infinite. */
public record Range(double low, double high) {

  public Range {
    if (!(low <= high)) {
      throw new IllegalArgumentException("a range runs from low to high, not " + low + ", " + high);
    }
  }

  /** The range of exp of it. */
  public Range exp() {
    return new Range(Math.exp(low), Math.exp(high));
  }

  /** high − low. */
  public double width() {
    return high - low;
  }
}
