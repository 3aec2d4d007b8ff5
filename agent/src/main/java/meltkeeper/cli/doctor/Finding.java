package meltkeeper.cli.doctor;

import java.util.Locale;

/**
 * One thing that was looked at.
 *
 * @param about what was looked at, {@code printer heron}
 * @param found in words
 * @param mend what to do; empty when nothing is amiss
 */
public record Finding(Mark mark, String about, String found, String mend) {

  /** How much it matters. */
  public enum Mark {
    /** As it should be. */
    WELL,
    /** Works, but less well than it could, or could not be looked at. */
    WEAK,
    /** Keeps the agent from its work. */
    BAD
  }

  static Finding well(String about, String found) {
    return new Finding(Mark.WELL, about, found, "");
  }

  static Finding weak(String about, String found, String mend) {
    return new Finding(Mark.WEAK, about, found, mend);
  }

  static Finding bad(String about, String found, String mend) {
    return new Finding(Mark.BAD, about, found, mend);
  }

  /** {@code well store …}, the mend on a line of its own. */
  @Override
  public String toString() {
    String line = "%-5s %s: %s".formatted(mark.name().toLowerCase(Locale.ROOT), about, found);
    return mend.isEmpty() ? line : line + System.lineSeparator() + "      mend: " + mend;
  }
}
