package meltkeeper.bench;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import meltkeeper.desk.Bench;
import meltkeeper.desk.Shop;
import meltkeeper.part.Because;
import meltkeeper.part.Part;
import meltkeeper.part.PartEvent;
import meltkeeper.protocol.HotEnd;
import meltkeeper.store.sql.Stores;
import meltkeeper.web.ServedShop;
import meltkeeper.web.guard.WebSettings;
import org.jspecify.annotations.Nullable;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * How long a browser waits for a view of a large shop: {@code printers} hot ends at work, a liner
 * on each, and 5,000 parts of the past. Over HTTP on the loopback interface, as a browser asks.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 3)
@Fork(1)
public class PageBenchmark {

  private static final int PAST_PARTS = 5_000;

  /** Hot ends at work. */
  @Param({"1", "300"})
  public int printers;

  /** The view. */
  @Param({"/", "/parts?all=true", "/printers/p000"})
  public String view = "";

  private final HttpClient client = HttpClient.newHttpClient();
  private Path folder = Path.of("");
  private @Nullable ServedShop shop;

  /** Fills the shop. */
  @Setup
  public void open() throws IOException {
    folder = Files.createTempDirectory("page-benchmark");
    List<String> names =
        IntStream.range(0, printers).mapToObj(i -> String.format("p%03d", i)).toList();
    ServedShop made =
        new ServedShop(
            Stores.open("jdbc:sqlite:" + folder.resolve("page.db")),
            new Shop(names, Bench.SHOP.kinds(), Bench.SHOP.costs(), Bench.SHOP.zone()),
            WebSettings.plain("127.0.0.1", 0));
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < PAST_PARTS; i++) {
      HotEnd hotEnd = HotEnd.first(names.get(i % printers));
      long from = Bench.NOW - (1_000L - i / 300) * 24 * Bench.HOUR;
      parts.add(
          Part.added("old-" + i, "liner", Optional.empty(), from)
              .with(
                  List.of(
                      new PartEvent.Fitted(from, hotEnd, Optional.empty()),
                      new PartEvent.Removed(
                          from + 20 * Bench.HOUR,
                          i % 3 == 0 ? Because.JAM : Because.PRECAUTION,
                          false))));
    }
    for (String name : names) {
      HotEnd hotEnd = HotEnd.first(name);
      made.bench.hot(hotEnd, Bench.NOW - 48 * Bench.HOUR, Bench.NOW, 225);
      parts.add(
          Part.added("new-" + name, "liner", Optional.empty(), Bench.NOW - 48 * Bench.HOUR)
              .with(
                  List.of(
                      new PartEvent.Fitted(
                          Bench.NOW - 48 * Bench.HOUR, hotEnd, Optional.empty()))));
      made.hear(hotEnd, "plant-labels-3", "PLA", ServedShop.CLEAR);
    }
    made.bench.store.saveParts(made.bench.store.revision(), parts);
    made.outlook().refresh(Bench.NOW);
    shop = made;
  }

  /** Ends the server. */
  @TearDown
  public void close() throws IOException {
    if (shop != null) {
      shop.close();
    }
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }

  /** One view, whole. */
  @Benchmark
  public int view() throws IOException, InterruptedException {
    if (shop == null) {
      throw new IllegalStateException("not open");
    }
    return client
        .send(
            HttpRequest.newBuilder(URI.create(shop.address(view)))
                .header("Accept", "text/html")
                .build(),
            BodyHandlers.ofString())
        .body()
        .length();
  }
}
