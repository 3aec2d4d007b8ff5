package meltkeeper.desk;

import java.util.List;
import java.util.stream.Collectors;
import meltkeeper.protocol.Fault;
import meltkeeper.store.Acknowledgement;
import meltkeeper.store.AlertEntry;
import meltkeeper.store.Outbox;

/** Questions about alerts, and their acknowledgement. Safe for any thread. */
public final class AlertDesk {

  /** How far back an alert can be acknowledged by its id. */
  private static final int REACH = 5_000;

  private static final int LEAST_OF_AN_ID = 4;

  private final Outbox outbox;

  AlertDesk(Outbox outbox) {
    this.outbox = outbox;
  }

  /** The latest alerts, the newest first. */
  public List<AlertLine> latest(int most) {
    return outbox.latest(most).stream().map(AlertLine::of).toList();
  }

  /**
   * Notes that somebody has seen to the episode of an alert.
   *
   * @param id of any alert of the episode, or its first characters
   * @param by whom
   * @throws RefusedException when no alert, or more than one episode, has such an id
   */
  public AlertLine acknowledge(String id, String by, long nowNanos) {
    List<AlertEntry> found =
        id.length() < LEAST_OF_AN_ID
            ? List.of()
            : outbox.latest(REACH).stream()
                .filter(
                    entry ->
                        entry.alert().id().startsWith(id)
                            || entry.alert().episode().id().startsWith(id))
                .toList();
    long episodes = found.stream().map(entry -> entry.alert().episode()).distinct().count();
    if (episodes != 1) {
      throw new RefusedException(List.of(notOne(id, found)));
    }
    outbox.acknowledge(found.get(0).alert().episode(), new Acknowledgement(nowNanos, by));
    String acknowledged = found.get(0).alert().id();
    return latest(REACH).stream()
        .filter(line -> line.id().equals(acknowledged))
        .findFirst()
        .orElseThrow();
  }

  private static Fault notOne(String id, List<AlertEntry> found) {
    return Fault.of(
        "id",
        id,
        "the id of an alert, or at least its first " + LEAST_OF_AN_ID + " characters",
        found.isEmpty()
            ? "alert list shows them"
            : "it may be "
                + found.stream()
                    .map(entry -> entry.alert().id())
                    .distinct()
                    .collect(Collectors.joining(" or ")));
  }
}
