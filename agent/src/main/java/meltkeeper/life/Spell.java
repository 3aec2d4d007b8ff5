package meltkeeper.life;

import meltkeeper.part.Exposure;

/**
 * A stretch of a part's life from one cleaning, or from the beginning, to the next cleaning or to
 * the end.
 *
 * @param hot hot time in it
 * @param idle the part of {@code hot} in which nothing was fed
 * @param restoredBefore share of its age that the cleaning before it is believed to have undone, 0
 *     to 1; 0 where there was none
 */
public record Spell(Exposure hot, Exposure idle, double restoredBefore) {

  public Spell {
    if (!(restoredBefore >= 0 && restoredBefore <= 1)) {
      throw new IllegalArgumentException("a cleaning restores 0 to 1, not " + restoredBefore);
    }
  }

  /** Hot time that no cleaning came before. */
  public static Spell of(Exposure hot) {
    return new Spell(hot, Exposure.NONE, 0);
  }

  /** Hot time after a cleaning. */
  public static Spell afterCleaning(double restored, Exposure hot) {
    return new Spell(hot, Exposure.NONE, restored);
  }
}
