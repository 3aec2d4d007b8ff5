package meltkeeper.endure;

import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import meltkeeper.testing.Mosquitto;
import meltkeeper.testing.Publisher;

/**
 * A shop of one printer on the ramp, behind a real broker, and the agent that keeps its books in
 * {@code shop.db}. The printer publishes in order; what it has published so far is known.
 */
final class RampShop implements AutoCloseable {

  static final String TOPIC = "plant/heron/status";

  private static final Duration PATIENCE = Duration.ofMinutes(2);

  private final Path folder;
  private final Ramp ramp;
  private final Mosquitto broker;
  private Start start = Start.USUAL;
  private final AtomicLong published = new AtomicLong();

  RampShop(Path folder, Ramp ramp) throws IOException {
    this.folder = folder;
    this.ramp = ramp;
    this.broker =
        Mosquitto.in(
                Files.createDirectories(folder.resolve("broker")), "max_inflight_messages 1000")
            .start();
    Files.createDirectories(folder.resolve("state"));
    Files.writeString(config(), configuration(broker.url().toString()));
  }

  /** The agent's configuration. */
  static String configuration(String url) {
    return """
        store: jdbc:sqlite:state/shop.db
        http: { listen: 127.0.0.1:0 }
        brokers:
          shop: { url: %s }
        mappings:
          status-json:
            - topic: plant/{printer}/status
              time: { at: /at, format: epoch-millis }
              read:
                hot-end-temperature: /now
                filament-commanded: /asked
        printers:
          heron: { from: { broker: shop, mapping: status-json } }
        """
        .formatted(url);
  }

  Path config() {
    return folder.resolve("meltkeeper.yaml");
  }

  Path state() {
    return folder.resolve("state");
  }

  Path store() {
    return state().resolve("shop.db");
  }

  Mosquitto broker() {
    return broker;
  }

  Ramp ramp() {
    return ramp;
  }

  /** How many readings were published. */
  long published() {
    return published.get();
  }

  /** From now on agents start quickly; it takes a start and an end to get there. */
  void startQuickly() throws IOException, InterruptedException {
    start = Start.quick(folder.resolve("archives"));
    try (AgentProcess first = agent()) {
      first.awaitReady();
      until("it has connected", () -> first.logged().contains("connected to"));
      first.end();
    }
    start = start.again();
  }

  /** An agent that commits twenty times a second. */
  AgentProcess agent() throws IOException {
    return agent(List.of());
  }

  AgentProcess agent(List<String> before) throws IOException {
    return AgentProcess.start(start, before, config(), folder.resolve("agent.log"));
  }

  /** Publishes that many readings more. */
  void publish(int readings) throws Exception {
    try (Publisher publisher = new Publisher(broker.url())) {
      publish(publisher, readings, 0);
    }
  }

  /** The same over an open connection, with a pause after each. */
  void publish(Publisher publisher, int readings, long pauseNanos) throws Exception {
    for (int i = 0; i < readings; i++) {
      publisher.publish(TOPIC, ramp.payload(published.get()));
      published.incrementAndGet();
      LockSupport.parkNanos(pauseNanos);
    }
  }

  /** Readings that the printer takes and nobody gets. */
  void skip(int readings) {
    published.addAndGet(readings);
  }

  /** What the books say now. */
  Books books() {
    return Books.of(store(), ramp);
  }

  /** Waits until everything published is credited, and gives the books. */
  Books untilCredited() {
    until(
        "reading " + published() + " is credited",
        () -> books().untilNanos() == Ramp.nanos(published() - 1));
    return books();
  }

  static void until(String what, Callable<Boolean> condition) {
    await(what)
        .atMost(PATIENCE)
        .pollInterval(Duration.ofMillis(20))
        .ignoreExceptions()
        .until(condition);
  }

  @Override
  public void close() {
    broker.close();
  }
}
