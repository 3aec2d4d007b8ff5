package meltkeeper.protocol;

import java.util.Comparator;

/**
 * One hot end of one printer.
 *
 * @param printer the printer's name in the configuration, not blank
 * @param index counted from 0, at most 15
 */
public record HotEnd(String printer, int index) implements Comparable<HotEnd> {

  /** The highest index. */
  public static final int MAX_INDEX = 15;

  private static final Comparator<HotEnd> ORDER =
      Comparator.comparing(HotEnd::printer).thenComparingInt(HotEnd::index);

  public HotEnd {
    if (printer.isBlank()) {
      throw new IllegalArgumentException("a printer's name must not be blank");
    }
    if (index < 0 || index > MAX_INDEX) {
      throw new IllegalArgumentException(
          "hot end " + index + " is not within 0 to " + MAX_INDEX + ", the first being 0");
    }
  }

  /** The first hot end of a printer. */
  public static HotEnd first(String printer) {
    return new HotEnd(printer, 0);
  }

  @Override
  public int compareTo(HotEnd other) {
    return ORDER.compare(this, other);
  }

  /** {@code heron} for the first hot end, {@code heron/1} for the second. */
  @Override
  public String toString() {
    return index == 0 ? printer : printer + "/" + index;
  }
}
