package meltkeeper.endure;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.TimeUnit;
import meltkeeper.ledger.Account;
import meltkeeper.store.Store;
import meltkeeper.store.sql.Stores;
import meltkeeper.testing.ScriptedPrinter;

/**
 * A shop of one printer on a line of its own, always at 214.9 °C, whose readings are timed by their
 * arrival. Hot time is then all the time from the first reading to the last, whatever was between,
 * as long as no gap reaches twelve hours.
 */
final class LineShop implements AutoCloseable {

  private final Path folder;
  private final ScriptedPrinter printer;
  private String store = "shop.db";

  LineShop(Path folder) throws IOException {
    this.folder = folder;
    this.printer = new ScriptedPrinter(ScriptedPrinter.POLLED);
    connect("tcp: 127.0.0.1:" + printer.port());
  }

  /** Writes a configuration in which the printer is reached so. */
  void connect(String from) throws IOException {
    Files.writeString(
        folder.resolve("meltkeeper.yaml"),
        """
        store: jdbc:sqlite:%s
        http: { listen: 127.0.0.1:0 }
        printers:
          ibis: { from: { %s, every: 500ms } }
        """
            .formatted(store, from));
  }

  /** Begins a new store. */
  void begin(int number) throws IOException {
    store = "shop-" + number + ".db";
    connect("tcp: 127.0.0.1:" + printer.port());
  }

  ScriptedPrinter printer() {
    return printer;
  }

  AgentProcess agent(long offSeconds) throws IOException {
    return AgentProcess.start(
        Start.USUAL,
        List.of(),
        folder.resolve("meltkeeper.yaml"),
        folder.resolve("agent.log"),
        offSeconds);
  }

  /** The books. */
  Line line() {
    try (Store open = Stores.open("jdbc:sqlite:" + folder.resolve(store))) {
      Account account = open.accounts().get(0);
      return new Line(
          account.lastArrivalNanos().orElseThrow(), account.total().exposure().hotNanos());
    }
  }

  /** Waits until it is credited some readings further than {@code line}, and gives the books. */
  Line further(Line line) {
    RampShop.until("it hears", () -> line().untilNanos() > line.untilNanos() + SOME_NANOS);
    return line();
  }

  private static final long SOME_NANOS = Duration.ofSeconds(2).toNanos();

  /** Before anything was heard. */
  static final Line NOTHING = new Line(0, 0);

  /**
   * What stands in the books.
   *
   * @param untilNanos up to when everything is credited
   * @param hotNanos hot time, all of it
   */
  record Line(long untilNanos, long hotNanos) {

    /** Since when it must have been hot for this to be right. */
    long sinceNanos() {
      return untilNanos - hotNanos;
    }

    /** How far it is credited behind this computer's clock. */
    Duration behindNow() {
      Instant now = Instant.now();
      return Duration.ofNanos(
          TimeUnit.SECONDS.toNanos(now.getEpochSecond()) + now.getNano() - untilNanos);
    }
  }

  @Override
  public void close() throws IOException {
    printer.close();
  }
}
