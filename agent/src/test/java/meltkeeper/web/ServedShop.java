package meltkeeper.web;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import meltkeeper.desk.Bench;
import meltkeeper.desk.Desk;
import meltkeeper.desk.Shop;
import meltkeeper.jam.Cause;
import meltkeeper.jam.Detector;
import meltkeeper.jam.Level;
import meltkeeper.jam.MinutesToStall;
import meltkeeper.jam.Outlook;
import meltkeeper.metrics.Metrics;
import meltkeeper.metrics.Sight;
import meltkeeper.outlook.GcodeBatch;
import meltkeeper.outlook.OutlookDesk;
import meltkeeper.pipeline.HotEndLive;
import meltkeeper.pipeline.Live;
import meltkeeper.pipeline.Minute;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.motion.MotionLimits;
import meltkeeper.store.MemoryStore;
import meltkeeper.store.Store;
import meltkeeper.web.guard.WebSettings;
import meltkeeper.web.guard.WebSettings.CertificateFiles;
import meltkeeper.web.view.AgentView;

/** A shop over a store in memory, served on a free port of the loopback interface. */
public final class ServedShop implements AgentView, AutoCloseable {

  public static final Outlook CLEAR = watch(Level.CLEAR, 0.1, "fed 99 % of what was asked");
  public static final Outlook NARROWING =
      new Outlook(
          Level.NARROWING,
          Map.of(Detector.FEED_RATIO, 1.3),
          "fed 83 % of what was asked over the last 400 mm; normal here is 98-100 %",
          Optional.of(new MinutesToStall(4, 11)),
          Optional.of(Cause.PARTIAL_CLOG));

  public final Bench bench;
  private final Shop shop;
  private final OutlookDesk outlook;
  private final Metrics metrics;
  private final Web web;
  private final HttpClient client = HttpClient.newHttpClient();
  private volatile Live live = Live.EMPTY;
  private volatile long nowNanos = Bench.NOW;

  /** On a port of its own over TLS, by {@code server.key} and {@code server.crt} in a folder. */
  public static WebSettings encrypted(Path folder) {
    return new WebSettings(
        "127.0.0.1",
        0,
        Set.of(),
        Optional.empty(),
        false,
        Optional.of(
            new CertificateFiles(folder.resolve("server.key"), folder.resolve("server.crt"))));
  }

  public ServedShop() {
    this(Bench.SHOP, WebSettings.plain("127.0.0.1", 0));
  }

  public ServedShop(WebSettings settings) {
    this(Bench.SHOP, settings);
  }

  public ServedShop(Shop shop, WebSettings settings) {
    this(new MemoryStore(), shop, settings);
  }

  /** A shop over another store, which is closed with it. */
  public ServedShop(Store store, Shop shop, WebSettings settings) {
    this.bench = new Bench(store, shop);
    this.outlook = new OutlookDesk(bench.store, shop);
    this.shop = shop;
    this.metrics =
        new Metrics(
            () ->
                new Sight(
                    live,
                    List.of(),
                    List.of(),
                    List.of(),
                    Map.of(),
                    List.of(),
                    java.util.OptionalLong.empty()));
    this.web = new Web(settings, this, metrics);
  }

  private static Outlook watch(Level level, double evidence, String because) {
    return new Outlook(
        level, Map.of(Detector.FEED_RATIO, evidence), because, Optional.empty(), Optional.empty());
  }

  /** Hears a hot end print at 225 °C, as the watch sees it. */
  public void hear(HotEnd hotEnd, String job, String material, Outlook watch) {
    Map<HotEnd, HotEndLive> heard = new HashMap<>();
    live.hotEnds().forEach(one -> heard.put(one.hotEnd(), one));
    heard.put(
        hotEnd,
        new HotEndLive(
            hotEnd,
            nowNanos,
            OptionalDouble.of(224.7),
            OptionalDouble.of(225),
            OptionalDouble.of(0.4),
            Optional.of(JobState.PRINTING),
            job,
            material,
            OptionalDouble.of(0.42),
            bench.total(hotEnd),
            watch,
            0));
    live =
        new Live(
            heard.values().stream()
                .sorted(java.util.Comparator.comparing(HotEndLive::hotEnd))
                .toList(),
            1,
            1,
            Map.of(),
            List.of(),
            0,
            Optional.empty());
  }

  /** Lets everything go on at another time, nanoseconds since 1970. */
  public void at(long nanos) {
    nowNanos = nanos;
  }

  /** The store fails, or is well again. */
  public void trouble(Optional<String> why) {
    live = new Live(live.hotEnds(), 1, 1, Map.of(), List.of(), 0, why);
  }

  public int port() {
    return web.port();
  }

  public String address(String path) {
    return "http://127.0.0.1:" + port() + path;
  }

  public HttpResponse<String> get(String path, String... headers) {
    return send(request(path, headers).GET().build());
  }

  public HttpResponse<String> post(String path, String json, String... headers) {
    return send(
        request(path, headers)
            .setHeader("Content-Type", "application/json")
            .POST(BodyPublishers.ofString(json))
            .build());
  }

  /** Posts a form as a browser does from a page of its own. */
  public HttpResponse<String> form(String path, String fields, String... headers) {
    return send(
        request(path, headers)
            .setHeader("Content-Type", "application/x-www-form-urlencoded")
            .setHeader("Sec-Fetch-Site", "same-origin")
            .POST(BodyPublishers.ofString(fields))
            .build());
  }

  public HttpRequest.Builder request(String path, String... headers) {
    HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(address(path)));
    for (int i = 0; i < headers.length; i += 2) {
      request.setHeader(headers[i], headers[i + 1]);
    }
    return request;
  }

  public HttpResponse<String> send(HttpRequest request) {
    try {
      return client.send(request, BodyHandlers.ofString());
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  @Override
  public Live live() {
    return live;
  }

  @Override
  public List<Minute> trail(HotEnd hotEnd) {
    return List.of(
        minute(nowNanos - 3 * Bench.MINUTE, 0.2),
        minute(nowNanos - 2 * Bench.MINUTE, 0.4),
        minute(nowNanos - Bench.MINUTE, 0.6));
  }

  private static Minute minute(long from, double evidence) {
    return new Minute(
        from, OptionalDouble.of(224.7666), OptionalDouble.of(225), 180_000, 178_000, evidence);
  }

  @Override
  public Map<String, Boolean> sources() {
    return Map.of("shop", true);
  }

  @Override
  public Map<String, String> routeTroubles() {
    return Map.of();
  }

  @Override
  public Desk desk() {
    return bench.desk;
  }

  @Override
  public OutlookDesk outlook() {
    return outlook;
  }

  @Override
  public Shop shop() {
    return shop;
  }

  @Override
  public GcodeBatch gcode(String printer, String fileName) {
    return new GcodeBatch(fileName, MotionLimits.DEFAULT, index -> 150);
  }

  @Override
  public double hotAboveCelsius(HotEnd hotEnd) {
    return 150;
  }

  @Override
  public long nowNanos() {
    return nowNanos;
  }

  @Override
  public void close() {
    web.close();
    metrics.close();
    bench.store.close();
  }
}
