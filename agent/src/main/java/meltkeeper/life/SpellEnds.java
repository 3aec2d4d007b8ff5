package meltkeeper.life;

import java.util.ArrayList;
import java.util.List;

/** Log virtual ages at which the spells of a part, or of many, began and ended. */
final class SpellEnds {

  private double[] starts = new double[8];
  private double[] ends = new double[8];
  private int startCount;
  private int endCount;

  /** Adds the spells of a part whose past was so long; returns its virtual age at the end. */
  double add(PartLife part, Ageing ageing, double pastReferenceHours) {
    double age = pastReferenceHours;
    for (Spell spell : part.spells()) {
      double start = age * (1 - ageing.restores(spell.restoredBefore()));
      age = start + ageing.hours(spell);
      if (age > start) {
        add(start, age);
      }
    }
    return age;
  }

  /**
   * The spells up to each failure of a part, the first from its beginning, each other from the
   * failure before; last, those that it has outlived since, if it is alive.
   */
  static List<SpellEnds> byFailure(PartLife part, Ageing ageing, double pastReferenceHours) {
    List<SpellEnds> stretches = new ArrayList<>();
    SpellEnds open = new SpellEnds();
    double age = pastReferenceHours;
    for (Spell spell : part.spells()) {
      double start = age * (1 - ageing.restores(spell.restoredBefore()));
      age = start + ageing.hours(spell);
      if (age > start) {
        open.add(start, age);
      }
      if (spell.failed()) {
        stretches.add(open);
        open = new SpellEnds();
      }
    }
    stretches.add(open);
    return stretches;
  }

  private void add(double start, double end) {
    if (endCount == ends.length) {
      ends = java.util.Arrays.copyOf(ends, 2 * endCount);
      starts = java.util.Arrays.copyOf(starts, 2 * endCount);
    }
    ends[endCount++] = Math.log(end);
    if (start > 0) {
      starts[startCount++] = Math.log(start);
    }
  }

  /** log Σ (end^β − start^β); minus infinity for no spell. */
  double logPowers(double shape) {
    double largest = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < endCount; i++) {
      largest = Math.max(largest, ends[i]);
    }
    if (endCount == 0) {
      return largest;
    }
    double sum = 0;
    for (int i = 0; i < endCount; i++) {
      sum += Math.exp(shape * (ends[i] - largest));
    }
    for (int i = 0; i < startCount; i++) {
      sum -= Math.exp(shape * (starts[i] - largest));
    }
    return sum > 0 ? shape * largest + Math.log(sum) : Double.NEGATIVE_INFINITY;
  }
}
