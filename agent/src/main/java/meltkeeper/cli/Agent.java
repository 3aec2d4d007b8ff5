package meltkeeper.cli;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import meltkeeper.config.Settings;
import meltkeeper.desk.PartHeat;
import meltkeeper.desk.PartHeats;
import meltkeeper.metrics.Metrics;
import meltkeeper.metrics.Sight;
import meltkeeper.pipeline.Intake;
import meltkeeper.pipeline.Live;
import meltkeeper.pipeline.Pipeline;
import meltkeeper.source.Source;
import meltkeeper.source.SteadyClock;
import meltkeeper.source.mqtt.Session;
import meltkeeper.store.Store;
import meltkeeper.web.Overview;
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
  private final PartHeats heats;
  private final Metrics metrics;
  private final Web web;

  /**
   * Starts everything; the store stays the caller's to close.
   *
   * @throws meltkeeper.store.StoreException when another agent writes to the store
   */
  Agent(Settings settings, Store store, SteadyClock clock, Duration commitEvery) {
    this.settings = settings;
    store.claim();
    this.heats = new PartHeats(store);
    this.pipeline =
        new Pipeline(
            new Intake(Joints.decoders(settings), Joints.limits(settings), store), commitEvery);
    this.sources =
        Joints.sources(settings, broker -> Session.kept(Installation.of(settings), broker), clock);
    this.metrics = new Metrics(this::sight);
    this.web = new Web(settings.listen().host(), settings.listen().port(), this::overview, metrics);
    sources.forEach(source -> source.start(pipeline::accept));
    LOG.info(
        "listening to {} for {} printers",
        sources.stream().map(Source::name).collect(Collectors.joining(", ")),
        settings.printers().size());
  }

  /** A steady clock that does not begin before the last reading that the store knows. */
  static SteadyClock clockFor(Store store) {
    long latest =
        store.accounts().stream()
            .flatMapToLong(account -> account.lastArrivalNanos().stream())
            .max()
            .orElse(Long.MIN_VALUE);
    return SteadyClock.notBefore(latest);
  }

  /** What stands now. */
  Live live() {
    return pipeline.live();
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
    Live live = pipeline.live();
    return new Sight(live, Dressing.fitted(heats(live)), sourcesUp());
  }

  private Overview overview() {
    Live live = pipeline.live();
    return Dressing.overview(live, heats(live), sourcesUp());
  }

  private List<PartHeat> heats(Live live) {
    return heats.heats(Dressing.totals(live), System.currentTimeMillis() * 1_000_000);
  }

  /** Ends the sources first, then takes in what waits, and commits. */
  @Override
  public void close() {
    List<AutoCloseable> inOrder = new ArrayList<>(sources);
    inOrder.add(pipeline);
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
