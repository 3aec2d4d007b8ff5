package meltkeeper.protocol.gcode;

import meltkeeper.protocol.Rejected;

/**
 * One field of a report line: {@code T0:214.9 /215.0}.
 *
 * @param key its letters, {@code T}, {@code B@} and the like
 * @param index the number behind the letters, {@link #NO_INDEX} without one
 * @param actual the first number
 * @param target the number behind the slash, {@link Figure#ABSENT} without one
 */
record Field(String key, int index, Figure actual, Figure target) {

  static final int NO_INDEX = -1;

  boolean isNamed(String name) {
    return key.equals(name);
  }

  boolean hasIndex() {
    return index != NO_INDEX;
  }

  boolean hasSameName(Field other) {
    return index == other.index && key.equals(other.key);
  }

  /** True for a temperature of whatever part of the printer. */
  boolean isTemperature() {
    return key.length() == 1 && "TBC".contains(key);
  }

  /** True for a place of an axis. */
  boolean isPosition() {
    return key.length() == 1 && "XYZE".contains(key);
  }

  /** The figure that ends the field. */
  Figure last() {
    return target.isPresent() ? target : actual;
  }

  /**
   * A number as printed.
   *
   * @param value not a number when none is there, or when it says so itself
   * @param decimals digits behind the point; {@link #NONE} when there is no number
   */
  record Figure(double value, int decimals) {

    private static final int NONE = -1;

    /** Nothing there. */
    static final Figure ABSENT = new Figure(Double.NaN, NONE);

    /** Something there, but not a number: {@code nan}, {@code ?}. */
    static final Figure UNDEFINED = new Figure(Double.NaN, 0);

    static Figure of(Decimal number) {
      return new Figure(number.value(), number.decimals());
    }

    boolean isPresent() {
      return decimals != NONE;
    }

    boolean isNumber() {
      return !Double.isNaN(value);
    }

    boolean hasFewerDecimalsThan(Figure other) {
      return isNumber() && other.isNumber() && decimals < other.decimals;
    }
  }

  /** The rejection of a figure that is there but is no number. */
  Rejected notANumber() {
    return new Rejected(
        Rejected.Reason.NOT_A_NUMBER,
        key + (hasIndex() ? index : "") + " tells no number; allowed: a decimal number");
  }
}
