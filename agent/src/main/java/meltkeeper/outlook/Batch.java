package meltkeeper.outlook;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import meltkeeper.part.Exposure;

/**
 * A batch to come.
 *
 * @param hot hot time by hot end
 * @param hours how long it takes, hot or not, above 0
 * @param hottestCelsius its highest temperature
 * @param notes on how it was reckoned
 */
public record Batch(
    Map<Integer, Exposure> hot, double hours, double hottestCelsius, List<String> notes) {

  public Batch {
    hot = new TreeMap<>(hot);
    notes = List.copyOf(notes);
    if (!(hours > 0) || Double.isInfinite(hours)) {
      throw new IllegalArgumentException("a batch lasts longer than 0 h, not " + hours);
    }
  }

  /** One batch after the other. */
  public Batch then(Batch next) {
    Map<Integer, Exposure> both = new TreeMap<>(hot);
    next.hot.forEach((hotEnd, more) -> both.merge(hotEnd, more, Exposure::plus));
    List<String> all = new java.util.ArrayList<>(notes);
    next.notes.stream().filter(note -> !notes.contains(note)).forEach(all::add);
    return new Batch(both, hours + next.hours, Math.max(hottestCelsius, next.hottestCelsius), all);
  }

  /** What it does to a hot end. */
  Exposure on(int hotEnd) {
    return hot.getOrDefault(hotEnd, Exposure.NONE);
  }
}
