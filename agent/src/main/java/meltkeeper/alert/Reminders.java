package meltkeeper.alert;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import meltkeeper.alert.route.Words;
import meltkeeper.part.Moments;
import meltkeeper.store.Alert;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.OpenEpisode;
import meltkeeper.store.Outbox;
import meltkeeper.store.Posting;

/**
 * Tells again of episodes that go on and that nobody has acknowledged.
 *
 * @param after the latest alert of an episode
 */
record Reminders(
    Duration after, Function<AlertTopic, List<String>> routes, Words words, Outbox outbox) {

  void post(long nowNanos) {
    List<Posting> due = new ArrayList<>();
    for (OpenEpisode episode : outbox.open()) {
      boolean isDue = nowNanos - episode.latest().atNanos() >= after.toNanos();
      if (episode.hasCalled() && !episode.isAcknowledged() && isDue) {
        due.add(
            new Posting(next(episode.latest(), nowNanos), routes.apply(episode.latest().topic())));
      }
    }
    if (!due.isEmpty()) {
      outbox.post(due);
    }
  }

  private Alert next(Alert latest, long nowNanos) {
    boolean isFirst = latest.phase() != Alert.Phase.REMINDER;
    String since = Moments.words(latest.episode().beganNanos(), words.zone());
    String text = isFirst ? "Since " + since + " and not over: " + latest.text() : latest.text();
    return new Alert(
        latest.episode(), Alert.Phase.REMINDER, isFirst ? 0 : latest.number() + 1, nowNanos, text);
  }
}
