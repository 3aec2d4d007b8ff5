package meltkeeper.protocol;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** Finds the known word that a mistyped one was probably meant to be. */
public final class Nearest {

  private Nearest() {}

  /**
   * The known word with the fewest edits (a letter inserted, dropped, changed, or two neighbours
   * exchanged; case aside) from the word found. When none is nearer than half the letters of the
   * longer one, a word that begins with the one found, if that has three letters or more. The first
   * in order among equals.
   */
  public static Optional<String> to(String found, Collection<String> known) {
    return known.stream()
        .sorted()
        .filter(word -> 2 * edits(found, word) < Math.max(found.length(), word.length()) + 1)
        .min(Comparator.comparingInt(word -> edits(found, word)))
        .or(() -> known.stream().sorted().filter(word -> begins(found, word)).findFirst());
  }

  private static boolean begins(String found, String known) {
    return found.length() >= 3 && known.regionMatches(true, 0, found, 0, found.length());
  }

  /** Optimal string alignment distance. */
  private static int edits(String found, String known) {
    String from = found.toLowerCase(Locale.ROOT);
    String to = known.toLowerCase(Locale.ROOT);
    int[][] least = new int[from.length() + 1][to.length() + 1];
    for (int i = 0; i <= from.length(); i++) {
      for (int j = 0; j <= to.length(); j++) {
        if (i == 0 || j == 0) {
          least[i][j] = i + j;
          continue;
        }
        int changed = least[i - 1][j - 1] + (from.charAt(i - 1) == to.charAt(j - 1) ? 0 : 1);
        least[i][j] = Math.min(changed, 1 + Math.min(least[i - 1][j], least[i][j - 1]));
        if (i > 1
            && j > 1
            && from.charAt(i - 1) == to.charAt(j - 2)
            && from.charAt(i - 2) == to.charAt(j - 1)) {
          least[i][j] = Math.min(least[i][j], least[i - 2][j - 2] + 1);
        }
      }
    }
    return least[from.length()][to.length()];
  }
}
