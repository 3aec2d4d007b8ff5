package meltkeeper.alert;

import java.time.Duration;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import meltkeeper.alert.route.Message;
import meltkeeper.alert.route.Route;
import meltkeeper.alert.route.RouteSettings;
import meltkeeper.alert.route.UndeliveredException;
import meltkeeper.alert.route.Words;
import meltkeeper.protocol.HotEnd;
import meltkeeper.store.Alert;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Episode;
import meltkeeper.store.Subject;

/** Alerts and routes for tests. */
public final class Calls {

  public static final long SECOND = 1_000_000_000L;

  /** 2026-03-02T08:00:00Z (GNU date). */
  public static final long MORNING = 1_772_438_400L * SECOND;

  public static final Words WORDS = new Words(ZoneOffset.UTC);
  public static final HotEnd HERON = HotEnd.first("heron");

  private Calls() {}

  public static Episode episode(AlertTopic topic, int number) {
    return new Episode(topic, new Subject.OfHotEnd(HERON), MORNING + number * SECOND);
  }

  public static Alert alert(AlertTopic topic, Alert.Phase phase) {
    return alert(topic, phase, 0);
  }

  public static Alert alert(AlertTopic topic, Alert.Phase phase, int number) {
    return new Alert(
        episode(topic, number), phase, 0, MORNING + number * SECOND, "heron needs \"you\".");
  }

  public static Message message(AlertTopic topic) {
    return new Message(alert(topic, Alert.Phase.BEGAN), false);
  }

  public static RouteSettings settings(String name, RouteSettings.Way way) {
    return new RouteSettings(
        name, EnumSet.allOf(AlertTopic.class), Optional.empty(), Duration.ofSeconds(2), way);
  }

  public static AlertSettings alerts(List<RouteSettings> routes) {
    return alerts(routes, OutboxLimits.DEFAULT);
  }

  public static AlertSettings alerts(List<RouteSettings> routes, OutboxLimits limits) {
    return new AlertSettings(
        Duration.ofHours(4),
        Duration.ofMinutes(10),
        Duration.ofMinutes(30),
        Duration.ofMinutes(10),
        0.1,
        100,
        limits,
        routes,
        Optional.empty());
  }

  /** A route that does as it is told, and remembers. */
  public static final class Scripted implements Route {
    private final List<String> taken = new ArrayList<>();
    private final List<Optional<UndeliveredException>> script;
    private int next;

    /** Fails as the script says, then takes everything. */
    public Scripted(List<Optional<UndeliveredException>> script) {
      this.script = script;
    }

    @Override
    public synchronized void deliver(Message message) throws UndeliveredException {
      Optional<UndeliveredException> failure =
          next < script.size() ? script.get(next) : Optional.empty();
      next++;
      if (failure.isPresent()) {
        throw failure.get();
      }
      taken.add(message.alert().id());
    }

    public synchronized List<String> taken() {
      return List.copyOf(taken);
    }

    public synchronized int tries() {
      return next;
    }
  }
}
