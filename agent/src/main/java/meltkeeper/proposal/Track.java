package meltkeeper.proposal;

import java.util.Set;
import java.util.TreeSet;

/** The values seen at one place of the messages of one topic. Mutable. */
final class Track {

  private static final int MANY_WORDS = 12;
  private static final int LONG_WORD = 60;

  private final Set<String> words = new TreeSet<>();
  private double first = Double.NaN;
  private double last = Double.NaN;
  private double least = Double.POSITIVE_INFINITY;
  private double most = Double.NEGATIVE_INFINITY;
  private long rises;
  private long falls;
  private boolean hasText;

  void take(double value) {
    if (Double.isNaN(first)) {
      first = value;
    } else if (value > last) {
      rises++;
    } else if (value < last) {
      falls++;
    }
    last = value;
    least = Math.min(least, value);
    most = Math.max(most, value);
  }

  void take(String word) {
    hasText = true;
    if (words.size() < MANY_WORDS && word.length() <= LONG_WORD) {
      words.add(word);
    }
  }

  boolean isNumber() {
    return !hasText && !Double.isNaN(first);
  }

  boolean isText() {
    return hasText && Double.isNaN(first);
  }

  double least() {
    return least;
  }

  double most() {
    return most;
  }

  boolean moves() {
    return rises + falls > 0;
  }

  /** Grew, and now and then at most fell a little, as a total does over retractions. */
  boolean grows() {
    return rises > falls && last > first;
  }

  Set<String> words() {
    return Set.copyOf(words);
  }

  /** What was seen, for a comment. */
  String seen() {
    if (isText()) {
      return words.isEmpty() ? "said more than fits here" : "said " + String.join(", ", words);
    }
    return (moves() ? "%s to %s" : "always %s").formatted(shown(least), shown(most))
        + (grows() ? ", growing" : "");
  }

  private static String shown(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e15
        ? String.valueOf((long) value)
        : String.format(java.util.Locale.ROOT, "%.4g", value);
  }
}
