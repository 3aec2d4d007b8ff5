package meltkeeper.caution;

import java.util.Locale;
import meltkeeper.protocol.HotEnd;

/** Something that calls for care, or does so no more. The family is closed. */
public sealed interface Caution {

  /** What it is about. */
  enum Sort {
    TOO_HOT,
    IDLE_HOT,
    SILENT
  }

  HotEnd hotEnd();

  /** The time of the reading or look that shows it. */
  long atNanos();

  Sort sort();

  /** What is the matter and what to do, in plain words. */
  String text();

  /** A hot end above the limit of a part that is fitted. */
  record TooHot(HotEnd hotEnd, long atNanos, double celsius, double limitCelsius)
      implements Caution {
    @Override
    public Sort sort() {
      return Sort.TOO_HOT;
    }

    @Override
    public String text() {
      return "%s is at %s, above the limit of %s for a part that is fitted. Turn its target down now;"
              .formatted(hotEnd, degrees(celsius), degrees(limitCelsius))
          + " if it goes on rising, switch the printer off at the wall.";
    }
  }

  /** A hot end that is hot and has nothing to do. */
  record IdleHot(HotEnd hotEnd, long atNanos, double celsius, long idleNanos) implements Caution {
    @Override
    public Sort sort() {
      return Sort.IDLE_HOT;
    }

    @Override
    public String text() {
      return "%s has been hot (%s) with nothing to do for %d min. The filament in it is cooking:"
              .formatted(hotEnd, degrees(celsius), idleNanos / 60_000_000_000L)
          + " go on printing, or turn it off.";
    }
  }

  /**
   * A printer that was hot or printing when it was last heard.
   *
   * @param celsius when it was last heard
   */
  record Silent(HotEnd hotEnd, long atNanos, double celsius, long silentNanos) implements Caution {
    @Override
    public Sort sort() {
      return Sort.SILENT;
    }

    @Override
    public String text() {
      return "%s has not been heard for %d min, and was at %s when it fell silent."
              .formatted(hotEnd.printer(), silentNanos / 60_000_000_000L, degrees(celsius))
          + " Look whether it still runs, and check its cable or network.";
    }
  }

  /** The end of a caution, if there was one. */
  record Over(HotEnd hotEnd, long atNanos, Sort sort, double celsius) implements Caution {
    @Override
    public String text() {
      return switch (sort) {
        case TOO_HOT -> hotEnd + " is below its limit again, at " + degrees(celsius) + ".";
        case IDLE_HOT -> hotEnd + " has work again, or has cooled down.";
        case SILENT -> hotEnd.printer() + " is heard again.";
      };
    }
  }

  private static String degrees(double celsius) {
    return String.format(Locale.ROOT, "%.0f °C", celsius);
  }
}
