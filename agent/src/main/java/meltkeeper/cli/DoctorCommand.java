package meltkeeper.cli;

import java.io.PrintWriter;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import meltkeeper.cli.doctor.Doctor;
import meltkeeper.cli.doctor.Finding;
import meltkeeper.cli.doctor.Heard;
import meltkeeper.cli.doctor.Kept;
import meltkeeper.config.From;
import meltkeeper.config.PrinterSettings;
import meltkeeper.config.Settings;
import meltkeeper.desk.AnswerJson;
import meltkeeper.protocol.mapping.MappingDecoder;
import meltkeeper.source.Source;
import meltkeeper.source.SteadyClock;
import meltkeeper.source.mqtt.MqttSource;
import meltkeeper.source.mqtt.Session;
import meltkeeper.source.serial.SerialSource;
import meltkeeper.source.tcp.TcpSource;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** A look over the whole installation. */
@Command(
    name = "doctor",
    description = {
      "Looks the installation over: Java, disk, clock, store, brokers, ports, printers, signals;",
      "tells what is amiss and what mends it. Exit code 1 when something keeps the agent from its",
      "work. It may be called while the agent runs."
    })
final class DoctorCommand implements Callable<Integer> {

  @Mixin private ConfigFile config = new ConfigFile();

  @Option(
      names = "--for",
      paramLabel = "SECONDS",
      defaultValue = "20",
      description = "How long to listen; ${DEFAULT-VALUE} s by default.")
  private int seconds;

  @Option(names = "--json", description = "Prints the findings as JSON.")
  private boolean json;

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() throws InterruptedException {
    Settings settings = config.settings();
    Kept kept = Kept.of(settings);
    SteadyClock clock = new SteadyClock();
    List<Source> sources = sources(settings, clock, kept.agentRuns());
    Heard heard = new Heard(Joints.decoders(settings));
    List<Finding> findings = new ArrayList<>();
    try {
      sources.forEach(source -> source.start(heard::take));
      CountDownLatch stopped = new CountDownLatch(1);
      StopSignal.arrange(stopped, new CountDownLatch(0));
      if (!sources.isEmpty()) {
        stopped.await(seconds, TimeUnit.SECONDS);
      }
      findings.addAll(new Doctor(settings, heard, sources, kept, Instant.now()).findings());
    } finally {
      sources.forEach(Source::close);
    }
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.println(AnswerJson.print(Map.of("findings", findings)));
    } else {
      findings.forEach(out::println);
    }
    return findings.stream().anyMatch(finding -> finding.mark() == Finding.Mark.BAD) ? 1 : 0;
  }

  /** A port that the agent has open is left to it; brokers take any number of listeners. */
  private static List<Source> sources(Settings settings, SteadyClock clock, boolean agentRuns) {
    List<Source> sources = new ArrayList<>();
    settings
        .brokers()
        .forEach(
            (name, broker) -> {
              var filters = new MappingDecoder(settings.routes(name)).subscriptions();
              sources.add(new MqttSource(broker.unnamed(), Session.passing(), filters, clock));
            });
    for (PrinterSettings printer : settings.printers().values()) {
      if (!agentRuns && printer.from() instanceof From.Serial serial) {
        sources.add(SerialSource.of(serial.settings(), clock));
      } else if (!agentRuns && printer.from() instanceof From.Tcp tcp) {
        sources.add(TcpSource.of(tcp.settings(), clock));
      }
    }
    return sources;
  }
}
