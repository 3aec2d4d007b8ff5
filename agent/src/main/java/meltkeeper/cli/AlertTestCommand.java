package meltkeeper.cli;

import java.io.PrintWriter;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import meltkeeper.alert.route.Message;
import meltkeeper.alert.route.Route;
import meltkeeper.alert.route.RouteSettings;
import meltkeeper.alert.route.Routes;
import meltkeeper.alert.route.Sending;
import meltkeeper.alert.route.UndeliveredException;
import meltkeeper.alert.route.Words;
import meltkeeper.config.Settings;
import meltkeeper.desk.AnswerJson;
import meltkeeper.protocol.Fault;
import meltkeeper.source.SteadyClock;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Tries a route. */
@Command(
    name = "test",
    description = "Sends a sample on one route, marked as one; nothing is the matter then.",
    footer = {"", "Example: meltkeeper alert test phone"})
final class AlertTestCommand implements Callable<Integer> {

  @Parameters(paramLabel = "ROUTE", description = "Its name in the configuration.")
  private String name = "";

  @Option(names = "--json", description = "Print one JSON object.")
  private boolean json;

  @Mixin private ConfigFile config = new ConfigFile();
  @Spec private CommandSpec spec = CommandSpec.create();

  @Override
  public Integer call() throws InterruptedException {
    Settings settings = config.settings();
    RouteSettings wanted =
        settings.alerts().routes().stream()
            .filter(route -> route.name().equals(name))
            .findFirst()
            .orElseThrow(() -> new FaultsException(java.util.List.of(unknown(settings))));
    SteadyClock clock = SteadyClock.notBefore(Long.MIN_VALUE);
    Routes routes =
        new Routes(
            new Words(settings.zone()),
            settings.alerts().remind(),
            Joints.publishing(settings),
            Sending.NOWHERE);
    try (Route route = routes.of(wanted)) {
      route.deliver(Message.sample(name, clock.now().wallNanos()));
    } catch (UndeliveredException e) {
      throw new FailedException("route " + name + ": " + e.getMessage());
    }
    PrintWriter out = spec.commandLine().getOut();
    out.println(
        json
            ? AnswerJson.print(Map.of("route", name, "delivered", true))
            : "A sample was delivered on the route " + name + ".");
    return 0;
  }

  private Fault unknown(Settings settings) {
    String known =
        settings.alerts().routes().stream()
            .map(RouteSettings::name)
            .collect(Collectors.joining(", "));
    return Fault.of(
        "route",
        name,
        known.isEmpty() ? "a route of the configuration, which names none" : "one of " + known,
        "routes stand under alerts.routes");
  }
}
