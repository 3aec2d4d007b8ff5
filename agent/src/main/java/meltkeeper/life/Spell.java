package meltkeeper.life;

import meltkeeper.part.Exposure;

/**
 * A stretch of a part's life from one cleaning, or from the beginning, to the next cleaning or to
 * the end; or to a failure that the part was used again after.
 *
 * @param hot hot time in it
 * @param idle the part of {@code hot} in which nothing was fed
 * @param restoredBefore share of its age that the cleaning before it is believed to have undone, 0
 *     to 1; 0 where there was none
 * @param failed true when the part failed at the end of it, was made good, and went on
 */
public record Spell(Exposure hot, Exposure idle, double restoredBefore, boolean failed) {

  public Spell {
    if (!(restoredBefore >= 0 && restoredBefore <= 1)) {
      throw new IllegalArgumentException("a cleaning restores 0 to 1, not " + restoredBefore);
    }
  }

  public Spell(Exposure hot, Exposure idle, double restoredBefore) {
    this(hot, idle, restoredBefore, false);
  }

  /** Hot time that no cleaning came before. */
  public static Spell of(Exposure hot) {
    return new Spell(hot, Exposure.NONE, 0);
  }

  /** Hot time after a cleaning. */
  public static Spell afterCleaning(double restored, Exposure hot) {
    return new Spell(hot, Exposure.NONE, restored);
  }

  /** The same, ended by a failure after which the part was used again. */
  public Spell endedByFailure() {
    return new Spell(hot, idle, restoredBefore, true);
  }
}
