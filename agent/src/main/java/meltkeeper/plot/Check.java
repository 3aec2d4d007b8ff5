package meltkeeper.plot;

import java.util.List;

/** The checks that inputs share; each complaint names the value found and what is allowed. */
final class Check {

  /** Far beyond any hour or price, and near enough that no sum of coordinates overflows. */
  private static final double LARGEST = 1e12;

  private Check() {}

  static void text(String what, String text) {
    if (text.isBlank()) {
      throw new IllegalArgumentException(what + " is blank; give it at least one word");
    }
  }

  static void number(String what, double value) {
    if (!(Math.abs(value) <= LARGEST)) {
      throw new IllegalArgumentException(
          what + " is " + value + "; allowed is a finite number between -1e12 and 1e12");
    }
  }

  static void notNegative(String what, double value) {
    number(what, value);
    if (value < 0) {
      throw new IllegalArgumentException(what + " is " + value + "; allowed is 0 or more");
    }
  }

  static void count(String what, List<?> list, int least, int most) {
    if (list.size() < least || list.size() > most) {
      throw new IllegalArgumentException(
          what + " number " + list.size() + "; allowed are " + least + " to " + most);
    }
  }

  static void sameLength(String what, double[] first, double[] second) {
    if (first.length != second.length) {
      throw new IllegalArgumentException(
          what + " has " + first.length + " x but " + second.length + " y; give one y for each x");
    }
  }

  static void order(String what, double earlier, double later) {
    if (later < earlier) {
      throw new IllegalArgumentException(
          what + " goes back from x " + earlier + " to " + later + "; sort it by x");
    }
  }
}
