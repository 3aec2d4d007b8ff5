package meltkeeper.store;

import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Alerts, and how far each has come on its routes. Safe for use by several threads, and by several
 * processes on the same store. Every method throws {@link StoreException} when the store cannot be
 * reached.
 */
public interface Outbox {

  /**
   * Posts alerts that no commit carries. An alert whose id was posted before is left as it is, and
   * so are its deliveries.
   */
  void post(List<Posting> postings);

  /** What waits on a route, due or not, in the order it was posted. */
  List<Letter> waiting(String route, int most);

  /** By route: how much waits on it. Routes that nothing waits on are left out. */
  Map<String, Integer> waiting();

  /** Notes how an attempt went. A delivery that waits no more stays as it is. */
  default void note(Delivery delivery) {
    note(List.of(delivery));
  }

  /** The same of several, all or none. */
  void note(List<Delivery> deliveries);

  /**
   * Forgets episodes that are over and of which nothing waits, and reminders but the latest of
   * those that go on, as far as all of it is older.
   *
   * @param beforeNanos what happened then or later stays
   * @param most episodes to forget in one go
   * @return how many episodes were forgotten
   */
  int prune(long beforeNanos, int most);

  /** The episodes that go on, in the order they began to be told. */
  List<OpenEpisode> open();

  /** The latest alerts, the newest first. */
  List<AlertEntry> latest(int most);

  /**
   * Notes that somebody has seen to an episode; the first acknowledgement stays.
   *
   * @return false when no such episode was posted
   */
  boolean acknowledge(Episode episode, Acknowledgement acknowledgement);

  /**
   * Notes that nothing was done to any part because of an episode, so that nobody asks again.
   *
   * @return false when no such episode was posted
   */
  boolean settle(Episode episode);

  /** The episodes that were settled so. */
  Set<Episode> settled();
}
