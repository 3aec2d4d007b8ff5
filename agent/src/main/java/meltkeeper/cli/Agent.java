package meltkeeper.cli;

import io.javalin.util.JavalinBindException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import meltkeeper.alert.Dispatch;
import meltkeeper.cli.calls.OutlookCalls;
import meltkeeper.cli.calls.OutlookRounds;
import meltkeeper.config.CommandTopic;
import meltkeeper.config.Settings;
import meltkeeper.desk.Desk;
import meltkeeper.desk.When;
import meltkeeper.metrics.Metrics;
import meltkeeper.metrics.Sight;
import meltkeeper.metrics.otlp.OtlpPush;
import meltkeeper.outlook.OutlookDesk;
import meltkeeper.pipeline.Intake;
import meltkeeper.pipeline.Live;
import meltkeeper.pipeline.Pipeline;
import meltkeeper.source.Source;
import meltkeeper.source.SteadyClock;
import meltkeeper.source.mqtt.Session;
import meltkeeper.store.Store;
import meltkeeper.web.Web;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The running agent: sources into the pipeline, the page and the metrics beside it. */
final class Agent implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(Agent.class);

  /** Kind to an SD card: one synced write every ten seconds. */
  static final Duration USUAL_COMMIT = Duration.ofSeconds(10);

  private final Settings settings;
  private final Pipeline pipeline;
  private final List<Source> sources;
  private final SteadyClock clock;
  private final Desk desk;
  private final OutlookDesk outlook;
  private final OutlookRounds outlookRounds;
  private final Dispatch dispatch;
  private final Optional<Buttons> buttons;
  private final Gauges gauges;
  private final Metrics metrics;
  private final Optional<OtlpPush> otlp;
  private final Web web;

  /**
   * Starts everything; the store stays the caller's to close.
   *
   * @throws meltkeeper.store.StoreException when another agent writes to the store
   */
  Agent(Settings settings, Store store, SteadyClock clock, Duration commitEvery) {
    this.settings = settings;
    this.clock = clock;
    store.claim();
    this.desk = Desk.of(store, OpenDesk.shop(settings));
    this.outlook = new OutlookDesk(store, OpenDesk.shop(settings));
    this.pipeline =
        new Pipeline(
            new Intake(
                Joints.decoders(settings),
                Joints.limits(settings),
                Joints.watching(settings),
                store,
                Joints.calling(settings)),
            commitEvery,
            () -> clock.now().steadyNanos());
    this.sources =
        Joints.sources(settings, broker -> Session.kept(Installation.of(settings), broker), clock);
    this.dispatch =
        new Dispatch(
            settings.alerts(),
            settings.zone(),
            Joints.publishing(settings),
            PrinterLines.of(sources),
            store.outbox(),
            clock::now,
            () -> pipeline.live().trouble());
    this.gauges = new Gauges(settings, desk);
    this.metrics = new Metrics(this::sight);
    this.web = served();
    this.outlookRounds =
        new OutlookRounds(
            outlook,
            new OutlookCalls(
                outlook,
                pipeline::live,
                store.outbox(),
                settings.alerts()::routesFor,
                Joints.batchLimits(settings),
                () -> Joints.freeBytes(settings),
                settings.zone()),
            clock::now);
    sources.forEach(source -> source.start(pipeline::accept));
    this.buttons = settings.commands().map(this::buttons);
    this.otlp =
        settings
            .metrics()
            .otlp()
            .map(to -> new OtlpPush(to, Installation.of(settings), metrics::snapshots));
    LOG.info(
        "listening to {} for {} printers",
        sources.stream().map(Source::name).collect(Collectors.joining(", ")),
        settings.printers().size());
  }

  private Buttons buttons(CommandTopic topic) {
    return new Buttons(
        topic,
        Objects.requireNonNull(settings.brokers().get(topic.broker()), topic.broker()),
        desk,
        () -> new When(settings.zone(), nowNanos()),
        clock);
  }

  private Web served() {
    try {
      return new Web(
          settings.web(),
          new AgentInView(
              settings,
              pipeline,
              desk,
              outlook,
              clock,
              this::sourcesUp,
              () -> Dressing.troubles(dispatch.states())),
          metrics);
    } catch (JavalinBindException e) {
      metrics.close();
      dispatch.close();
      pipeline.close();
      throw new FailedException(
          "the page cannot be served on "
              + settings.web()
              + ", which is in use or not this computer's; end what uses it, or set http.listen");
    }
  }

  /** A steady clock that does not begin before the last reading that the store knows. */
  static SteadyClock clockFor(Store store) {
    return SteadyClock.notBefore(latestNanos(store));
  }

  /** When the last reading that the store knows arrived; {@link Long#MIN_VALUE} without any. */
  static long latestNanos(Store store) {
    return store.accounts().stream()
        .flatMapToLong(account -> account.lastArrivalNanos().stream())
        .max()
        .orElse(Long.MIN_VALUE);
  }

  /** What stands now. */
  Live live() {
    return pipeline.live();
  }

  /** How it goes, in one line. */
  String standing() {
    Map<String, Boolean> up = sourcesUp();
    long connected = up.values().stream().filter(isUp -> isUp).count();
    return "%d of %d sources connected, %d messages heard%s"
        .formatted(
            connected,
            up.size(),
            live().received(),
            live().trouble().map(why -> "; the store takes no commits: " + why).orElse(""));
  }

  int port() {
    return web.port();
  }

  private Map<String, Boolean> sourcesUp() {
    Map<String, Boolean> up = new TreeMap<>();
    sources.forEach(source -> up.put(source.name(), source.state().isUp()));
    return up;
  }

  private Sight sight() {
    return gauges.sight(
        pipeline.live(), outlook.latest(), sourcesUp(), dispatch.states(), clock.now());
  }

  private long nowNanos() {
    return clock.now().wallNanos();
  }

  /** Ends the sources first, then takes in what waits, and commits. */
  @Override
  public void close() {
    List<AutoCloseable> inOrder = new ArrayList<>(sources);
    otlp.ifPresent(inOrder::add);
    buttons.ifPresent(inOrder::add);
    inOrder.add(pipeline);
    inOrder.add(outlookRounds);
    inOrder.add(dispatch);
    inOrder.add(web);
    inOrder.add(metrics);
    for (AutoCloseable part : inOrder) {
      try {
        part.close();
      } catch (Exception e) {
        LOG.warn("closing: {}", e.toString());
      }
    }
    LOG.info("ended; everything heard is stored for {} printers", settings.printers().size());
  }
}
