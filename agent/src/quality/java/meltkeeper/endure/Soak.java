package meltkeeper.endure;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import meltkeeper.jam.WatchSettings;
import meltkeeper.ledger.Limits;
import meltkeeper.pipeline.Calling;
import meltkeeper.pipeline.Intake;
import meltkeeper.protocol.Arrival;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.Signal;
import meltkeeper.protocol.mapping.JsonPath;
import meltkeeper.protocol.mapping.Mapping;
import meltkeeper.protocol.mapping.MappingDecoder;
import meltkeeper.protocol.mapping.MessageRule;
import meltkeeper.protocol.mapping.PayloadForm;
import meltkeeper.protocol.mapping.Route;
import meltkeeper.protocol.mapping.TimeFormat;
import meltkeeper.protocol.mapping.TimeRule;
import meltkeeper.protocol.mapping.TopicPattern;
import meltkeeper.protocol.mapping.ValueRule;
import meltkeeper.store.Store;
import meltkeeper.store.sql.Stores;

/**
 * A year of a shop of five printers in accelerated time, message by message through the agent's own
 * path into a store on the disk, on a heap of 64 MB; each round of readings is committed, as the
 * agent does when they come no faster than every ten seconds. Prints a row a month: heap in use,
 * size of the store, commits, and how far the hours are from the closed form. Arguments: days
 * (365), seconds between two readings (10; a divisor of 60).
 */
public final class Soak {

  private static final long BEGIN_MILLIS = 1_767_225_600_000L; // 2026-01-01T00:00:00Z
  private static final int MONTH_DAYS = 30;

  private final List<SoakPrinter> shop = SoakPrinter.shop();
  private final Store store;
  private final Path file;
  private final int everySeconds;
  private final Intake intake;
  private long messages;

  private Soak(Store store, Path file, int everySeconds) {
    this.everySeconds = everySeconds;
    this.store = store;
    this.file = file;
    this.intake =
        new Intake(
            decoder(),
            hotEnd -> Limits.DEFAULT,
            hotEnd -> WatchSettings.DEFAULT,
            store,
            Calling.NOBODY);
  }

  public static void main(String[] arguments) throws Exception {
    String days = arguments.length > 0 && !arguments[0].isBlank() ? arguments[0] : "365";
    String every = arguments.length > 1 ? arguments[1] : "10";
    if (arguments.length > 2) {
      run(Integer.parseInt(days), Integer.parseInt(every), Path.of(arguments[2]));
      return;
    }
    Path folder = Files.createTempDirectory("soak");
    Path file = folder.resolve("shop.db");
    Process process =
        new ProcessBuilder(Start.LASTING.java(Soak.class.getName(), days, every, file.toString()))
            .inheritIO()
            .start();
    int code = process.waitFor();
    for (String end : List.of("", "-wal", "-shm", ".lock")) {
      Files.deleteIfExists(file.resolveSibling("shop.db" + end));
    }
    Files.delete(folder);
    if (code != 0) {
      throw new IllegalStateException("the soak ended with " + code);
    }
  }

  private static void run(int days, int everySeconds, Path file) throws IOException {
    try (Store store = Stores.open("jdbc:sqlite:" + file)) {
      store.claim();
      Soak soak = new Soak(store, file, everySeconds);
      System.out.println(
          "| day | messages | heap after collection, MB | store, MB | MB a year and printer | commits a day | furthest from the closed form |");
      System.out.println("|---|---|---|---|---|---|---|");
      for (int day = 0; day < days; day++) {
        soak.day(day);
        if (day % MONTH_DAYS == MONTH_DAYS - 1 || day == days - 1) {
          soak.print(day + 1);
        }
      }
    }
  }

  private void day(int day) {
    for (int second = 0; second < SoakPrinter.DAY_SECONDS; second += everySeconds) {
      long millis = BEGIN_MILLIS + (day * (long) SoakPrinter.DAY_SECONDS + second) * 1000;
      for (SoakPrinter printer : shop) {
        intake.accept(message(printer, day, second, millis));
        messages++;
      }
      intake.commit();
    }
  }

  private static Received message(SoakPrinter printer, int day, int second, long millis) {
    boolean printing = printer.isPrinting(second);
    String json =
        "{\"at\":"
            + millis
            + ",\"now\":"
            + printer.celsiusAt(second)
            + ",\"set\":"
            + (printing ? printer.celsius() : 0)
            + ",\"asked\":"
            + printer.fed(day, second)
            + ",\"seen\":"
            + printer.fed(day, second) * 0.998
            + ",\"state\":\""
            + (printing ? "printing" : "idle")
            + "\"}";
    return Received.fresh(
        new Origin.Topic("shop", "plant/" + printer.name() + "/status"),
        Payload.of(json.getBytes(StandardCharsets.UTF_8)),
        Arrival.at(millis * 1_000_000));
  }

  private void print(int days) throws IOException {
    double furthest = 0;
    for (SoakPrinter printer : shop) {
      double hot =
          store
                  .tally(HotEnd.first(printer.name()), Long.MIN_VALUE, Long.MAX_VALUE)
                  .exposure()
                  .hotNanos()
              / 1e9;
      furthest = Math.max(furthest, Math.abs(hot - days * printer.hotSecondsADay()));
    }
    double megabytes = Files.size(file) / 1e6;
    System.out.printf(
        Locale.ROOT,
        "| %d | %,d | %.1f | %.1f | %.1f | %,d | %.6f s |%n",
        days,
        messages,
        heapMegabytes(),
        megabytes,
        megabytes / shop.size() * 365 / days,
        intake.live().commits() / days,
        furthest);
  }

  private static double heapMegabytes() {
    System.gc();
    Runtime runtime = Runtime.getRuntime();
    return (runtime.totalMemory() - runtime.freeMemory()) / 1e6;
  }

  private MappingDecoder decoder() {
    MessageRule rule =
        new MessageRule(
            TopicPattern.of("plant/{printer}/status"),
            PayloadForm.JSON,
            Optional.of(new TimeRule(JsonPath.of("/at"), TimeFormat.EPOCH_MILLIS)),
            List.of(
                value(Signal.HOT_END_TEMPERATURE, "/now"),
                value(Signal.HOT_END_TARGET, "/set"),
                value(Signal.FILAMENT_COMMANDED, "/asked"),
                value(Signal.FILAMENT_MEASURED, "/seen"),
                value(Signal.JOB_STATE, "/state")));
    Set<String> names = shop.stream().map(SoakPrinter::name).collect(Collectors.toSet());
    return new MappingDecoder(List.of(new Route(new Mapping("status", List.of(rule)), names)));
  }

  private static ValueRule value(Signal signal, String pointer) {
    return ValueRule.plain(signal, JsonPath.of(pointer));
  }
}
