package meltkeeper.cli;

import java.io.PrintWriter;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import meltkeeper.config.Settings;
import meltkeeper.config.Span;
import meltkeeper.proposal.Messages;
import meltkeeper.proposal.Proposal;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Received;
import meltkeeper.source.SteadyClock;
import meltkeeper.source.mqtt.BrokerSettings;
import meltkeeper.source.mqtt.MqttSource;
import meltkeeper.source.mqtt.Session;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What a broker has, and a mapping for it. */
@Command(
    name = "listen",
    description = {
      "Shows the messages of a broker as they come, until Ctrl-C or the end of --for; then"
          + " proposes",
      "a mapping for them. Let a printer print meanwhile: what moves tells most."
    },
    footer = {
      "",
      "Example:",
      "  meltkeeper listen --broker shop --topic 'plant/#' --for 2m",
      "A proposal is a guess by name, range and behaviour: compare each line with its comment."
    })
final class ListenCommand implements Callable<Integer> {

  private static final int SHOWN_CHARACTERS = 400;

  @Mixin private ConfigFile config = new ConfigFile();

  @Option(
      names = "--broker",
      required = true,
      paramLabel = "NAME",
      description = "The broker, by its name in the configuration.")
  private String broker = "";

  @Option(
      names = "--topic",
      paramLabel = "FILTER",
      defaultValue = "#",
      description = "Which topics, a filter as in MQTT; all of them by default.")
  private String filter = "";

  @Option(
      names = "--for",
      paramLabel = "TIME",
      description = "How long, as 30s or 2m; until Ctrl-C if not given.")
  private Optional<String> lasting = Optional.empty();

  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() throws InterruptedException {
    Settings settings = config.settings();
    Duration duration = lasting.map(this::duration).orElse(Duration.ofDays(36_500));
    BrokerSettings from = broker(settings);
    Messages messages = new Messages();
    CountDownLatch stopped = new CountDownLatch(1);
    CountDownLatch closed = new CountDownLatch(1);
    StopSignal.arrange(stopped, closed);
    try {
      listen(from, duration, stopped, messages);
      propose(messages, spec.commandLine().getOut());
    } finally {
      closed.countDown();
    }
    return 0;
  }

  private void listen(
      BrokerSettings from, Duration duration, CountDownLatch stopped, Messages messages)
      throws InterruptedException {
    try (MqttSource source =
        new MqttSource(from.unnamed(), Session.passing(), List.of(filter), new SteadyClock())) {
      source.start(received -> show(received, messages, spec.commandLine().getOut()));
      boolean wasStopped = stopped.await(duration.toMillis(), TimeUnit.MILLISECONDS);
      if (!wasStopped && !source.state().isUp()) {
        throw new FailedException("broker " + broker + ": " + source.state().reason());
      }
    }
  }

  private static void show(Received received, Messages messages, PrintWriter out) {
    String topic = ((Origin.Topic) received.origin()).topic();
    String payload = received.payload().text();
    messages.take(topic, payload);
    String rest =
        payload.length() > SHOWN_CHARACTERS ? " … (" + payload.length() + " characters)" : "";
    String begin = payload.substring(0, Math.min(payload.length(), SHOWN_CHARACTERS));
    out.println(harmless(topic) + "  " + harmless(begin) + rest);
  }

  /** A terminal obeys control characters; a broker must not have the say over it. */
  private static String harmless(String text) {
    return text.replaceAll("[\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}]", " ");
  }

  private void propose(Messages messages, PrintWriter out) {
    String proposal = Proposal.of(messages, broker);
    out.println();
    out.println(
        proposal.isEmpty()
            ? "# Nothing was recognised: listen while a printer prints, or map it by hand"
                + " (docs/configure.md)."
            : "# Proposed: compare each line with its comment, and take what is right into the"
                + " configuration.");
    out.print(proposal);
    out.flush();
  }

  private BrokerSettings broker(Settings settings) {
    return Optional.ofNullable(settings.brokers().get(broker))
        .orElseThrow(
            () ->
                new FaultsException(
                    List.of(
                        Fault.of(
                            "--broker",
                            broker,
                            "one of " + settings.brokers().keySet(),
                            "name it under brokers in " + config.path()))));
  }

  private Duration duration(String text) {
    return Span.of(text)
        .orElseThrow(
            () ->
                new ParameterException(
                    spec.commandLine(),
                    "--for: found \"" + text + "\"; allowed: a number and ms, s, m, h or d"));
  }
}
