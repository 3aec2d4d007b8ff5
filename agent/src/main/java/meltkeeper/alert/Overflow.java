package meltkeeper.alert;

import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import meltkeeper.store.Alert;
import meltkeeper.store.Episode;
import meltkeeper.store.Letter;

/**
 * What is given up when too much waits on a route: reminders first, then what can wait, then what
 * presses, the oldest of each first. Whatever else waits of an episode goes with its beginning, so
 * that no all-clear comes for what was never told.
 */
final class Overflow {

  private Overflow() {}

  /**
   * The letters to give up; none while all fit.
   *
   * @param waiting on one route, the oldest first
   * @param most that may wait
   */
  static List<Letter> of(List<Letter> waiting, int most) {
    int excess = waiting.size() - most;
    if (excess <= 0) {
      return List.of();
    }
    Set<Letter> given = new LinkedHashSet<>();
    List<Letter> inOrder =
        waiting.stream().sorted(Comparator.comparingInt(Overflow::worth)).toList();
    for (Letter letter : inOrder) {
      if (given.size() >= excess) {
        break;
      }
      given.add(letter);
      if (letter.alert().phase() != Alert.Phase.REMINDER) {
        Episode episode = letter.alert().episode();
        waiting.stream()
            .filter(other -> other.alert().episode().equals(episode))
            .forEach(given::add);
      }
    }
    return List.copyOf(given);
  }

  private static int worth(Letter letter) {
    if (letter.alert().phase() == Alert.Phase.REMINDER) {
      return 0;
    }
    return letter.alert().topic().isPressing() ? 2 : 1;
  }
}
