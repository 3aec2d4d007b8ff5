package meltkeeper.config;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** Finds what a person most likely meant. */
final class Nearest {

  private Nearest() {}

  /** The choice with the fewest edits; what follows a first word of it counts as one edit. */
  static Optional<String> to(String typed, Collection<String> choices) {
    return choices.stream().min(Comparator.comparingInt(choice -> distance(typed, choice)));
  }

  private static int distance(String typed, String choice) {
    String a = typed.toLowerCase(Locale.ROOT).replace('_', '-');
    String b = choice.toLowerCase(Locale.ROOT);
    int least = edits(a, b);
    for (int dash = b.indexOf('-'); dash > 0; dash = b.indexOf('-', dash + 1)) {
      least = Math.min(least, 1 + edits(a, b.substring(0, dash)));
    }
    return least;
  }

  /** Levenshtein distance with swapped neighbours as one edit (optimal string alignment). */
  static int edits(String a, String b) {
    int[] beforeLast = new int[b.length() + 1];
    int[] last = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      last[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int[] row = new int[b.length() + 1];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        row[j] = Math.min(last[j - 1] + change, 1 + Math.min(last[j], row[j - 1]));
        boolean swapped =
            i > 1
                && j > 1
                && a.charAt(i - 1) == b.charAt(j - 2)
                && a.charAt(i - 2) == b.charAt(j - 1);
        if (swapped) {
          row[j] = Math.min(row[j], beforeLast[j - 2] + 1);
        }
      }
      beforeLast = last;
      last = row;
    }
    return last[b.length()];
  }
}
