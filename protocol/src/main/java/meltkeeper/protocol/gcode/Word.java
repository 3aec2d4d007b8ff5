package meltkeeper.protocol.gcode;

import java.math.BigDecimal;
import java.util.OptionalDouble;

/**
 * One word of a command line: a letter and its number, {@code X10.5}.
 *
 * @param letter A to Z, in upper case
 * @param number finite, never a negative zero; empty for a letter alone, which the RepRap dialect
 *     uses as a mark ({@code G28 X}; common practice, no source)
 */
public record Word(char letter, OptionalDouble number) {

  public Word {
    if (!Cursor.isLetter(letter)) {
      throw new IllegalArgumentException("a word begins with A to Z, not with " + letter);
    }
    if (number.isPresent()) {
      double value = number.getAsDouble();
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException(letter + " is followed by " + value + ", not finite");
      }
      if (value == 0 && 1 / value < 0) {
        number = OptionalDouble.of(0);
      }
    }
  }

  static Word of(char letter, double number) {
    return new Word(letter, OptionalDouble.of(number));
  }

  static Word mark(char letter) {
    return new Word(letter, OptionalDouble.empty());
  }

  boolean isMark() {
    return number.isEmpty();
  }

  /** The code of a G or M word in tenths, 921 for {@code G92.1}. */
  public int tenths() {
    return (int) Math.rint(number.orElse(0) * 10);
  }

  /** The word as on a line, without an exponent. */
  @Override
  public String toString() {
    if (number.isEmpty()) {
      return String.valueOf(letter);
    }
    BigDecimal decimal = new BigDecimal(Double.toString(number.getAsDouble()));
    return letter + decimal.stripTrailingZeros().toPlainString();
  }
}
