package meltkeeper.bench;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import meltkeeper.alert.AlertSettings;
import meltkeeper.alert.Dispatch;
import meltkeeper.alert.OutboxLimits;
import meltkeeper.alert.route.Publishing;
import meltkeeper.alert.route.RouteSettings;
import meltkeeper.alert.route.Sending;
import meltkeeper.alert.route.UndeliveredException;
import meltkeeper.caution.Guard;
import meltkeeper.ledger.Limits;
import meltkeeper.pipeline.Calling;
import meltkeeper.pipeline.Intake;
import meltkeeper.protocol.Arrival;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Sample;
import meltkeeper.source.mqtt.BrokerSettings;
import meltkeeper.source.mqtt.MqttPublisher;
import meltkeeper.store.Alert;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Episode;
import meltkeeper.store.Posting;
import meltkeeper.store.Store;
import meltkeeper.store.Subject;
import meltkeeper.store.sql.Stores;
import org.jspecify.annotations.Nullable;

/**
 * An agent's intake and its store, beside a route that does as it is named: {@code none} is there,
 * or it is {@code hanging}, {@code failing}, its broker is {@code gone}, or its outbox is {@code
 * full}. For one thread.
 */
final class CallSite implements AutoCloseable {

  private static final int READINGS = 3_600;
  private static final int MOST_WAITING = 500;
  private static final long TWO_SECONDS = 2_000_000_000L;
  private static final HotEnd HERON = HotEnd.first("heron");

  private final String route;
  private final Path folder;
  private final Store store;
  private final Dispatch dispatch;
  private final Intake intake;
  private @Nullable HttpServer failing;
  private @Nullable ServerSocket hanging;
  private long atNanos;

  CallSite(String route) throws IOException {
    this.route = route;
    folder = Files.createTempDirectory("calls");
    Store opened = Stores.open("jdbc:sqlite:" + folder.resolve("shop.db"));
    opened.claim();
    store = opened;
    List<RouteSettings> routes = new ArrayList<>();
    if (!route.equals("none")) {
      routes.add(route.equals("gone") ? board() : phone(receiver()));
      opened.outbox().post(alerts(route.equals("full") ? 2 * MOST_WAITING : 200));
    }
    AlertSettings settings =
        new AlertSettings(
            Duration.ofHours(4),
            Duration.ofMinutes(10),
            Duration.ofMinutes(30),
            Duration.ofMinutes(10),
            0.1,
            10_000,
            new OutboxLimits(Duration.ofDays(90), MOST_WAITING),
            routes,
            Optional.empty());
    dispatch =
        new Dispatch(
            settings,
            ZoneOffset.UTC,
            CallSite::nobody,
            Sending.NOWHERE,
            opened.outbox(),
            () -> Arrival.at(System.nanoTime()),
            Optional::empty);
    intake =
        new Intake(
            (received, outlet) -> {},
            hotEnd -> Limits.DEFAULT,
            hotEnd -> meltkeeper.jam.WatchSettings.DEFAULT,
            opened,
            new Calling(
                hotEnd -> new Guard(OptionalDouble.empty(), 150, Long.MAX_VALUE, Long.MAX_VALUE),
                Map.of(),
                settings::routesFor,
                hotEnd -> Optional.empty(),
                Duration.ofMinutes(10).toNanos()));
  }

  private int receiver() throws IOException {
    InetAddress here = InetAddress.getLoopbackAddress();
    if (route.equals("hanging")) {
      ServerSocket mute = new ServerSocket(0, 50, here);
      hanging = mute;
      return mute.getLocalPort();
    }
    HttpServer server = HttpServer.create(new InetSocketAddress(here, 0), 0);
    server.createContext(
        "/",
        exchange -> {
          exchange.sendResponseHeaders(500, -1);
          exchange.close();
        });
    server.start();
    failing = server;
    return server.getAddress().getPort();
  }

  private static RouteSettings phone(int port) {
    return phone(
        new RouteSettings.Webhook(
            URI.create("http://127.0.0.1:" + port + "/"),
            Optional.empty(),
            Map.of(),
            Optional.empty(),
            Optional.empty()));
  }

  private static RouteSettings board() {
    return phone(new RouteSettings.Mqtt("gone", "meltkeeper"));
  }

  private static RouteSettings phone(RouteSettings.Way way) {
    return new RouteSettings(
        "phone", EnumSet.allOf(AlertTopic.class), Optional.empty(), Duration.ofSeconds(10), way);
  }

  /** A broker on a port that nobody listens on. */
  private static Publishing nobody(String broker, Duration timeout) {
    MqttPublisher publisher =
        new MqttPublisher(
            new BrokerSettings(
                broker,
                URI.create("tcp://127.0.0.1:1"),
                5,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty()),
            timeout);
    return new Publishing() {
      @Override
      public void publish(String topic, String payload, boolean retained)
          throws UndeliveredException, InterruptedException {
        try {
          publisher.publish(topic, payload, retained);
        } catch (IOException e) {
          throw UndeliveredException.forNow(String.valueOf(e.getMessage()));
        }
      }

      @Override
      public void close() {
        publisher.close();
      }
    };
  }

  private static List<Posting> alerts(int count) {
    List<Posting> alerts = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      Episode episode =
          new Episode(AlertTopic.TOO_HOT, new Subject.OfHotEnd(new HotEnd("ibis-" + i, 0)), i);
      alerts.add(
          new Posting(new Alert(episode, Alert.Phase.BEGAN, 0, i, "too hot"), List.of("phone")));
    }
    return alerts;
  }

  /** Takes two hours of a printer's readings in, and commits them. */
  void takeTwoHours() {
    for (int i = 0; i < READINGS; i++) {
      atNanos += TWO_SECONDS;
      intake.reading(
          new Reading.HotEndTemperature(Sample.arrived(HERON, atNanos), 225 + Math.sin(i / 5.0)));
    }
    intake.commit();
  }

  @Override
  public void close() throws IOException {
    dispatch.close();
    store.close();
    if (failing != null) {
      failing.stop(0);
    }
    if (hanging != null) {
      hanging.close();
    }
    try (var files = Files.list(folder)) {
      for (Path file : files.toList()) {
        Files.delete(file);
      }
    }
    Files.delete(folder);
  }
}
