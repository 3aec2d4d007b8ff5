package meltkeeper.store;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import meltkeeper.store.Delivery.State;

/** An outbox that is forgotten with its process. Safe for use by several threads. */
final class MemoryOutbox implements Outbox {

  private final Map<String, Alert> alerts = new LinkedHashMap<>();
  private final Map<String, Map<String, Delivery>> deliveries = new HashMap<>();
  private final Map<Episode, Acknowledgement> acknowledged = new HashMap<>();
  private final Set<Episode> over = new HashSet<>();
  private final Set<Episode> settled = new HashSet<>();

  @Override
  public synchronized void post(List<Posting> postings) {
    for (Posting posting : postings) {
      Alert alert = posting.alert();
      if (alerts.putIfAbsent(alert.id(), alert) == null) {
        Map<String, Delivery> ofAlert = new TreeMap<>();
        posting.routes().forEach(route -> ofAlert.put(route, Delivery.of(alert, route)));
        deliveries.put(alert.id(), ofAlert);
        if (alert.phase() == Alert.Phase.ALL_CLEAR) {
          over.add(alert.episode());
        }
      }
    }
  }

  @Override
  public synchronized List<Letter> waiting(String route, int most) {
    List<Letter> letters = new ArrayList<>();
    for (Alert alert : alerts.values()) {
      Optional.ofNullable(of(alert).get(route))
          .filter(delivery -> delivery.state() == State.WAITING && letters.size() < most)
          .ifPresent(
              delivery ->
                  letters.add(
                      new Letter(
                          alert,
                          delivery,
                          acknowledged.containsKey(alert.episode()),
                          over.contains(alert.episode()))));
    }
    return List.copyOf(letters);
  }

  private Map<String, Delivery> of(Alert alert) {
    return deliveries.getOrDefault(alert.id(), new TreeMap<>());
  }

  @Override
  public synchronized Map<String, Integer> waiting() {
    Map<String, Integer> waiting = new TreeMap<>();
    deliveries.values().stream()
        .flatMap(ofAlert -> ofAlert.values().stream())
        .filter(delivery -> delivery.state() == State.WAITING)
        .forEach(delivery -> waiting.merge(delivery.route(), 1, Integer::sum));
    return waiting;
  }

  @Override
  public synchronized void note(List<Delivery> all) {
    for (Delivery delivery : all) {
      Optional.ofNullable(deliveries.get(delivery.alertId()))
          .ifPresent(
              ofAlert ->
                  ofAlert.computeIfPresent(
                      delivery.route(),
                      (route, known) -> known.state() == State.WAITING ? delivery : known));
    }
  }

  @Override
  public synchronized int prune(long beforeNanos, int most) {
    Map<Episode, List<Alert>> told = new LinkedHashMap<>();
    alerts.values().forEach(a -> told.computeIfAbsent(a.episode(), e -> new ArrayList<>()).add(a));
    int gone = 0;
    for (Map.Entry<Episode, List<Alert>> entry : told.entrySet()) {
      List<Alert> ofEpisode = entry.getValue();
      if (!over.contains(entry.getKey())) {
        ofEpisode.subList(0, ofEpisode.size() - 1).stream()
            .filter(alert -> alert.phase() == Alert.Phase.REMINDER)
            .filter(alert -> isPrunable(alert, beforeNanos))
            .forEach(this::forget);
      } else if (gone < most && ofEpisode.stream().allMatch(a -> isPrunable(a, beforeNanos))) {
        ofEpisode.forEach(this::forget);
        over.remove(entry.getKey());
        acknowledged.remove(entry.getKey());
        gone++;
      }
    }
    return gone;
  }

  private boolean isPrunable(Alert alert, long beforeNanos) {
    return alert.atNanos() < beforeNanos
        && of(alert).values().stream().noneMatch(d -> d.state() == State.WAITING);
  }

  private void forget(Alert alert) {
    alerts.remove(alert.id());
    deliveries.remove(alert.id());
  }

  @Override
  public synchronized List<OpenEpisode> open() {
    Map<Episode, OpenEpisode> open = new LinkedHashMap<>();
    for (Alert alert : alerts.values()) {
      if (!over.contains(alert.episode())) {
        boolean called =
            !of(alert).isEmpty()
                || (open.containsKey(alert.episode()) && open.get(alert.episode()).hasCalled());
        open.put(
            alert.episode(),
            new OpenEpisode(alert, called, acknowledged.containsKey(alert.episode())));
      }
    }
    return List.copyOf(open.values());
  }

  @Override
  public synchronized List<AlertEntry> latest(int most) {
    List<Alert> newestFirst = new ArrayList<>(alerts.values());
    Collections.reverse(newestFirst);
    return newestFirst.stream()
        .limit(most)
        .map(
            alert ->
                new AlertEntry(
                    alert,
                    List.copyOf(of(alert).values()),
                    Optional.ofNullable(acknowledged.get(alert.episode()))))
        .toList();
  }

  @Override
  public synchronized boolean acknowledge(Episode episode, Acknowledgement acknowledgement) {
    boolean known = isKnown(episode);
    if (known) {
      acknowledged.putIfAbsent(episode, acknowledgement);
    }
    return known;
  }

  @Override
  public synchronized boolean settle(Episode episode) {
    boolean known = isKnown(episode);
    if (known) {
      settled.add(episode);
    }
    return known;
  }

  @Override
  public synchronized Set<Episode> settled() {
    return Set.copyOf(settled);
  }

  private boolean isKnown(Episode episode) {
    return alerts.values().stream().anyMatch(alert -> alert.episode().equals(episode));
  }
}
