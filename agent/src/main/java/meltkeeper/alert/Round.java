package meltkeeper.alert;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import meltkeeper.store.Alert;
import meltkeeper.store.Episode;
import meltkeeper.store.Letter;

/**
 * What waits on a route, in the order in which it is tried: what presses first, so that no jam
 * waits behind a replacement, and within that the oldest first.
 */
record Round(List<Letter> letters, Map<Episode, Letter> lastReminders) {

  static Round of(List<Letter> waiting) {
    Map<Episode, Letter> last = new HashMap<>();
    for (Letter letter : waiting) {
      if (letter.alert().phase() == Alert.Phase.REMINDER) {
        last.put(letter.alert().episode(), letter);
      }
    }
    return new Round(
        waiting.stream()
            .sorted(Comparator.comparing(letter -> letter.alert().topic().isPressing() ? 0 : 1))
            .toList(),
        last);
  }

  /** True for a reminder when a later one of its episode waits: that one says it all. */
  boolean isSuperseded(Letter letter) {
    return letter.alert().phase() == Alert.Phase.REMINDER
        && !letter.equals(lastReminders.get(letter.alert().episode()));
  }
}
