package meltkeeper.cli;

import java.io.PrintWriter;
import java.time.Duration;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import meltkeeper.cli.report.TextTable;
import meltkeeper.config.ConfigReader;
import meltkeeper.config.Settings;
import meltkeeper.config.Span;
import meltkeeper.demo.DemoShop;
import meltkeeper.demo.PastPart;
import meltkeeper.desk.Desk;
import meltkeeper.desk.FitPart;
import meltkeeper.desk.PartFilter;
import meltkeeper.desk.PartLine;
import meltkeeper.pipeline.HotEndLive;
import meltkeeper.pipeline.Live;
import meltkeeper.protocol.JobState;
import meltkeeper.source.SteadyClock;
import meltkeeper.store.Store;
import meltkeeper.store.sql.Stores;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** A simulated shop and the agent, in one process, at a faster pace. */
@Command(
    name = "demo",
    description = "Runs a simulated shop of four printers and the agent beside it, time made fast.",
    footer = {"", "Example: meltkeeper demo --for 2m"})
final class DemoCommand implements Callable<Integer> {

  private static final Duration COMMIT_EVERY = Duration.ofSeconds(1);

  @Option(
      names = "--for",
      paramLabel = "TIME",
      description = "Ends after that time, such as 30s or 2m; without it, on Ctrl-C.")
  private Optional<String> lasting = Optional.empty();

  @Option(
      names = "--listen",
      paramLabel = "HOST:PORT",
      defaultValue = "127.0.0.1:8266",
      description = "Where the page and the metrics are; ${DEFAULT-VALUE} by default.")
  private String listen = "127.0.0.1:8266";

  @Option(
      names = "--pace",
      paramLabel = "TIMES",
      defaultValue = "60",
      description = "Simulated seconds in a second, 1 to 120; ${DEFAULT-VALUE} by default.")
  private int pace = 60;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() throws InterruptedException {
    Duration duration = lasting.map(this::duration).orElse(Duration.ofDays(36_500));
    CountDownLatch stopped = new CountDownLatch(1);
    CountDownLatch closed = new CountDownLatch(1);
    StopSignal.arrange(stopped, closed);
    long startNanos = System.currentTimeMillis() * 1_000_000;
    try (DemoShop shop = new DemoShop(startNanos, pace())) {
      Settings settings = settings(shop);
      SteadyClock clock = new SteadyClock(shop.clock()::nanos, shop.clock()::nanos);
      try (Store store = Stores.open(settings.storeUrl())) {
        Desk desk = Desk.of(store, OpenDesk.shop(settings));
        stock(desk, shop.parts(), startNanos);
        try (Agent agent = new Agent(settings, store, clock, COMMIT_EVERY)) {
          shop.start();
          welcome(agent);
          stopped.await(duration.toMillis(), TimeUnit.MILLISECONDS);
          tell(agent.live());
        }
        tell(desk.parts().parts(PartFilter.IN_USE, shop.clock().nanos()), settings.zone());
      }
    } finally {
      closed.countDown();
    }
    return 0;
  }

  private Duration duration(String text) {
    return Span.of(text)
        .orElseThrow(
            () ->
                new ParameterException(
                    spec.commandLine(),
                    "--for: found \"" + text + "\"; allowed: a number and ms, s, m, h or d"));
  }

  private int pace() {
    if (pace < 1 || pace > DemoShop.FASTEST) {
      throw new ParameterException(
          spec.commandLine(), "--pace: found \"" + pace + "\"; allowed: 1 to " + DemoShop.FASTEST);
    }
    return pace;
  }

  private Settings settings(DemoShop shop) {
    return ConfigReader.read(
            "the demo", shop.configuration() + "http: { listen: \"" + listen + "\" }\n")
        .fold(
            valid -> valid,
            faults -> {
              throw new FaultsException(faults);
            });
  }

  /** The parts that the shop had before, their past as it was kept on paper. */
  private static void stock(Desk desk, List<PastPart> parts, long nowNanos) {
    String paper =
        parts.stream()
            .map(
                part ->
                    String.join(
                        ",",
                        part.id(),
                        part.kind(),
                        part.ended(),
                        String.valueOf(part.celsius()),
                        String.valueOf(part.hours())))
            .collect(Collectors.joining("\n", "id,kind,ended,temperature,hours\n", "\n"));
    desk.paper().take("the demo's paper", paper, nowNanos);
    for (PastPart part : parts) {
      part.printer()
          .ifPresent(
              printer ->
                  desk.acts()
                      .fit(
                          new FitPart(
                              part.id(),
                              printer,
                              0,
                              OptionalLong.of(nowNanos),
                              Optional.empty(),
                              Optional.empty()),
                          nowNanos));
    }
  }

  private void welcome(Agent agent) {
    PrintWriter out = out();
    out.printf(
        "A simulated shop is at work, %d times as fast as a clock: heron, ibis, egret, kestrel.%n",
        pace);
    out.printf("page     http://127.0.0.1:%d/%n", agent.port());
    out.printf("metrics  http://127.0.0.1:%d/metrics%n", agent.port());
    out.println(lasting.map(text -> "It ends after " + text + ".").orElse("It ends on Ctrl-C."));
    out.flush();
  }

  private void tell(Live live) {
    PrintWriter out = out();
    out.println();
    out.printf(
        "Heard %d messages and lines, %d readings, %d rejected.%n",
        live.received(),
        live.readings(),
        live.rejected().entrySet().stream()
            .filter(entry -> entry.getKey().isFault())
            .mapToLong(entry -> entry.getValue())
            .sum());
    TextTable table =
        new TextTable("Printer", "State", ">Now °C", ">Hot min", ">Printing min", ">Filament m");
    for (HotEndLive hotEnd : live.hotEnds()) {
      table.row(
          hotEnd.hotEnd().toString(),
          hotEnd.state().map(JobState::word).orElse(""),
          hotEnd.celsius().isPresent()
              ? String.format(java.util.Locale.ROOT, "%.1f", hotEnd.celsius().getAsDouble())
              : "",
          tenths(hotEnd.total().exposure().hotNanos() / 60e9),
          tenths(hotEnd.total().printingNanos() / 60e9),
          tenths(hotEnd.total().commandedMicrometres() / 1e6));
    }
    table.print(out);
  }

  private void tell(List<PartLine> parts, ZoneId zone) {
    out().println();
    PartListCommand.table(parts, zone).print(out());
    out().flush();
  }

  private static String tenths(double value) {
    return String.format(java.util.Locale.ROOT, "%.1f", value);
  }

  private PrintWriter out() {
    return spec.commandLine().getOut();
  }
}
