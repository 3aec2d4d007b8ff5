package meltkeeper.desk;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import meltkeeper.part.Moments;
import meltkeeper.store.Acknowledgement;
import meltkeeper.store.Alert;
import meltkeeper.store.AlertEntry;
import meltkeeper.store.Delivery;

/**
 * An alert, for showing.
 *
 * @param episode the id that all alerts of one episode share
 * @param deliveries by route; none when it called nobody
 */
public record AlertLine(
    String id,
    String episode,
    String topic,
    String phase,
    Optional<String> printer,
    Optional<Integer> hotEnd,
    Optional<String> part,
    Instant began,
    Instant at,
    String text,
    List<String> cautions,
    List<OnRoute> deliveries,
    Optional<Instant> acknowledged,
    Optional<String> acknowledgedBy) {

  public AlertLine {
    cautions = List.copyOf(cautions);
    deliveries = List.copyOf(deliveries);
  }

  /**
   * How far it has come on one route.
   *
   * @param state waiting, delivered, cancelled or dead
   * @param detail why it waits or is dead
   */
  public record OnRoute(String route, String state, int attempts, String detail) {
    static OnRoute of(Delivery delivery) {
      return new OnRoute(
          delivery.route(), delivery.state().label(), delivery.attempts(), delivery.detail());
    }
  }

  static AlertLine of(AlertEntry entry) {
    Alert alert = entry.alert();
    return new AlertLine(
        alert.id(),
        alert.episode().id(),
        alert.topic().label(),
        alert.phase().label(),
        alert.subject().printerName(),
        alert.subject().place().map(hotEnd -> hotEnd.index()),
        alert.subject().partId(),
        Moments.instant(alert.episode().beganNanos()),
        Moments.instant(alert.atNanos()),
        alert.text(),
        alert.cautions(),
        entry.deliveries().stream().map(OnRoute::of).toList(),
        entry.acknowledged().map(Acknowledgement::atNanos).map(Moments::instant),
        entry.acknowledged().map(Acknowledgement::by));
  }
}
