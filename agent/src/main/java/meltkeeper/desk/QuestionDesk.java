package meltkeeper.desk;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import meltkeeper.ledger.Bucket;
import meltkeeper.part.Fitting;
import meltkeeper.part.Moments;
import meltkeeper.part.Part;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.HotEnd;
import meltkeeper.store.Alert;
import meltkeeper.store.AlertEntry;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Episode;
import meltkeeper.store.Store;

/**
 * Asks what the shop did after a jam, so that nobody keeps a log. A question is over once something
 * was told of the hot end since the jam, once it was answered with "nothing", or after three days.
 * Safe for any thread.
 */
public final class QuestionDesk {

  private static final long DAY = 86_400_000_000_000L;
  private static final long ASKED_FOR = 3 * DAY;

  /** So long cold that somebody may have had it in hands: two stretches of five minutes. */
  private static final long COLD_SPELL = 2 * Bucket.LENGTH_NANOS;

  /** A swap may be told as of a little before the jam was called. */
  private static final long BEFORE = 1_800_000_000_000L;

  private static final int LATEST = 500;
  private static final Set<AlertTopic> JAMS =
      Set.of(AlertTopic.JAM_NARROWING, AlertTopic.JAM_STALLED);

  private final Store store;
  private final Shop shop;

  QuestionDesk(Store store, Shop shop) {
    this.store = store;
    this.shop = shop;
  }

  /**
   * What is to be asked now, the oldest jam first.
   *
   * @param nowNanos the wall clock, nanoseconds since 1970
   */
  public List<SwapQuestion> open(long nowNanos) {
    Map<HotEnd, Alert> jams = latestJams(nowNanos);
    if (jams.isEmpty()) {
      return List.of();
    }
    List<Part> parts = store.parts();
    List<SwapQuestion> questions = new ArrayList<>();
    jams.forEach(
        (hotEnd, jam) -> {
          if (!wasTold(parts, hotEnd, jam.atNanos() - BEFORE)) {
            question(hotEnd, jam, parts, nowNanos).ifPresent(questions::add);
          }
        });
    questions.sort(Comparator.comparing(SwapQuestion::jammed));
    return questions;
  }

  /**
   * Notes that nothing was done after a jam.
   *
   * @param episode id of the jam's alerts
   * @throws RefusedException for an id that no jam of late has
   */
  public void nothing(String episode) {
    Episode jam =
        store.outbox().latest(LATEST).stream()
            .map(entry -> entry.alert().episode())
            .filter(one -> one.id().equals(episode))
            .findFirst()
            .orElseThrow(
                () ->
                    new RefusedException(
                        List.of(
                            Fault.of(
                                "episode",
                                episode,
                                "the episode of a jam",
                                "alert list shows them"))));
    store.outbox().settle(jam);
  }

  private Map<HotEnd, Alert> latestJams(long nowNanos) {
    Map<HotEnd, Alert> jams = new HashMap<>();
    Set<Episode> settled = store.outbox().settled();
    for (AlertEntry entry : store.outbox().latest(LATEST)) {
      Alert alert = entry.alert();
      if (JAMS.contains(alert.topic())
          && alert.phase() == Alert.Phase.BEGAN
          && nowNanos - alert.atNanos() < ASKED_FOR
          && !settled.contains(alert.episode())) {
        alert
            .subject()
            .place()
            .ifPresent(
                place ->
                    jams.merge(
                        place, alert, (one, two) -> one.atNanos() > two.atNanos() ? one : two));
      }
    }
    return jams;
  }

  private static boolean wasTold(List<Part> parts, HotEnd hotEnd, long sinceNanos) {
    return parts.stream()
        .filter(part -> part.fittings().stream().anyMatch(stay -> stay.hotEnd().equals(hotEnd)))
        .flatMap(part -> part.events().stream())
        .anyMatch(event -> event.atNanos() > sinceNanos);
  }

  private Optional<SwapQuestion> question(
      HotEnd hotEnd, Alert jam, List<Part> parts, long nowNanos) {
    long hotUntil = jam.atNanos();
    for (Bucket bucket : store.buckets(hotEnd, jam.atNanos(), nowNanos)) {
      if (bucket.tally().exposure().hotNanos() > 0) {
        if (bucket.fromNanos() - hotUntil >= COLD_SPELL) {
          return Optional.of(
              new SwapQuestion(
                  jam.episode().id(),
                  hotEnd.printer(),
                  hotEnd.index(),
                  Moments.instant(jam.atNanos()),
                  Moments.instant(hotUntil),
                  Moments.instant(bucket.fromNanos()),
                  kinds(hotEnd, parts)));
        }
        hotUntil = bucket.untilNanos();
      }
    }
    return Optional.empty();
  }

  private List<String> kinds(HotEnd hotEnd, List<Part> parts) {
    Set<String> kinds = new LinkedHashSet<>();
    parts.stream()
        .filter(part -> part.fittings().stream().anyMatch(s -> s.isOpen() && isOn(s, hotEnd)))
        .map(Part::kind)
        .sorted()
        .forEach(kinds::add);
    kinds.addAll(shop.kindNames());
    return List.copyOf(kinds);
  }

  private static boolean isOn(Fitting stay, HotEnd hotEnd) {
    return stay.hotEnd().equals(hotEnd);
  }
}
