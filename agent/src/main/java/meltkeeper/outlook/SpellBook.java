package meltkeeper.outlook;

import java.util.ArrayList;
import java.util.List;
import meltkeeper.ledger.Tally;
import meltkeeper.life.Spell;
import meltkeeper.part.Exposure;

/** Collects a part's spells in order of time. */
final class SpellBook {

  private final List<Spell> closed = new ArrayList<>();
  private Exposure hot = Exposure.NONE;
  private Exposure idle = Exposure.NONE;
  private double restored;

  /** Hours that were told, not observed. */
  void ran(Exposure told) {
    hot = hot.plus(told);
  }

  /** Hours from the ledger. Idle ones are taken to have the temperatures of all of them. */
  void ran(Tally tally) {
    long hotNanos = tally.exposure().hotNanos();
    hot = hot.plus(tally.exposure());
    if (hotNanos > 0) {
      idle = idle.plus(tally.exposure().share(Math.min(tally.idleNanos(), hotNanos), hotNanos));
    }
  }

  /** A cleaning; two without an hour between them act one after the other. */
  void cleaned(double restores) {
    if (hot.hotNanos() > 0) {
      close(false);
      restored = restores;
    } else {
      restored = 1 - (1 - restored) * (1 - restores);
    }
  }

  /** A failure after which the part was used again. */
  void failed() {
    close(true);
  }

  private void close(boolean failed) {
    Spell spell = new Spell(hot, idle, restored);
    closed.add(failed ? spell.endedByFailure() : spell);
    hot = Exposure.NONE;
    idle = Exposure.NONE;
    restored = 0;
  }

  /** True while nothing is in it. */
  boolean isEmpty() {
    return closed.isEmpty() && hot.hotNanos() == 0;
  }

  /** All spells; the last is open. */
  List<Spell> spells() {
    List<Spell> all = new ArrayList<>(closed);
    all.add(new Spell(hot, idle, restored));
    return all;
  }
}
