package meltkeeper.store;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * Sees to it that an episode calls once: who finds trouble says {@link #begin} and {@link #end} as
 * often as it likes. Mutable, for one thread.
 *
 * <p>An episode found in old readings is kept as history and calls nobody. Should it still go on
 * when readings have become current again, it calls then.
 */
public final class Episodes {

  private record Key(AlertTopic topic, Subject subject) {}

  private record Open(Alert latest, boolean hasCalled) {}

  private final Function<AlertTopic, List<String>> routes;
  private final Map<Key, Open> open = new LinkedHashMap<>();
  private final List<Posting> pending = new ArrayList<>();

  /**
   * @param routes the names of those that want a topic
   * @param open episodes that went on when the store was last written
   */
  public Episodes(Function<AlertTopic, List<String>> routes, List<OpenEpisode> open) {
    this.routes = routes;
    open.forEach(
        episode ->
            this.open.put(
                key(episode.latest().episode()), new Open(episode.latest(), episode.hasCalled())));
  }

  private static Key key(Episode episode) {
    return new Key(episode.topic(), episode.subject());
  }

  /** True while an episode of that topic and subject goes on. */
  public boolean isOpen(AlertTopic topic, Subject subject) {
    return open.containsKey(new Key(topic, subject));
  }

  /**
   * Begins an episode, unless it goes on already. One that goes on and has called nobody calls now,
   * if this finding is current.
   *
   * @param isPast true when the finding is too old to call anybody
   */
  public void begin(AlertTopic topic, Subject subject, long atNanos, boolean isPast, String text) {
    Key key = new Key(topic, subject);
    Open known = open.get(key);
    if (known == null) {
      begin(key, new Episode(topic, subject, atNanos), 0, atNanos, isPast, text);
    } else if (!known.hasCalled() && !isPast && !routes.apply(topic).isEmpty()) {
      Alert latest = known.latest();
      begin(key, latest.episode(), latest.number() + 1, atNanos, false, text);
    }
  }

  private void begin(
      Key key, Episode episode, int number, long atNanos, boolean isPast, String text) {
    Alert alert = new Alert(episode, Alert.Phase.BEGAN, number, atNanos, text);
    post(alert, !isPast);
    open.put(key, new Open(alert, !isPast));
  }

  /** Ends an episode, if one goes on; whoever was called hears of the end, however late. */
  public void end(AlertTopic topic, Subject subject, long atNanos, String text) {
    Optional.ofNullable(open.remove(new Key(topic, subject)))
        .ifPresent(
            ended ->
                post(
                    new Alert(ended.latest().episode(), Alert.Phase.ALL_CLEAR, 0, atNanos, text),
                    ended.hasCalled()));
  }

  private void post(Alert alert, boolean calls) {
    pending.add(new Posting(alert, calls ? routes.apply(alert.topic()) : List.of()));
  }

  /** What is to be posted with the next commit. */
  public List<Posting> pending() {
    return List.copyOf(pending);
  }

  /** Notes that {@link #pending} is safely stored. */
  public void posted() {
    pending.clear();
  }
}
