package meltkeeper.metrics;

import static meltkeeper.metrics.ShopMetric.counter;
import static meltkeeper.metrics.ShopMetric.gauge;

import java.util.List;
import java.util.function.ToLongFunction;
import meltkeeper.pipeline.Live;
import meltkeeper.protocol.Rejected;

/** How the agent itself fares: its sources, its routes of alerts, its store, what it took in. */
final class AgentMetrics {

  private static final List<String> NONE = List.of();
  private static final List<String> ROUTE = List.of("route");

  static final List<ShopMetric> ALL =
      List.of(
          gauge(
              "source_up",
              List.of("source"),
              "1 while a broker or a printer's own link is connected, else 0.",
              (sight, out) -> sight.sources().forEach((name, up) -> out.add(up ? 1 : 0, name))),
          counter(
              "alerts",
              List.of("route", "outcome"),
              "Alerts on a route since the start: delivered, failed (a try that is repeated) or dead (given up).",
              (sight, out) -> {
                for (RouteSight route : sight.routes()) {
                  out.add((double) route.delivered(), route.name(), "delivered");
                  out.add((double) route.failed(), route.name(), "failed");
                  out.add((double) route.dead(), route.name(), "dead");
                }
              }),
          gauge(
              "alerts_waiting",
              ROUTE,
              "Alerts that wait on a route to be delivered.",
              (sight, out) -> sight.routes().forEach(r -> out.add(r.waiting(), r.name()))),
          gauge(
              "alert_route_full",
              ROUTE,
              "1 while as many alerts wait on a route as may, so that the oldest are given up.",
              (sight, out) -> sight.routes().forEach(r -> out.add(r.isFull() ? 1 : 0, r.name()))),
          gauge(
              "alert_route_up",
              ROUTE,
              "1 while the last try on a route of alerts went well, else 0.",
              (sight, out) -> sight.routes().forEach(r -> out.add(r.isUp() ? 1 : 0, r.name()))),
          gauge(
              "store_up",
              NONE,
              "1 while the store takes what is credited, 0 while that waits in memory.",
              (sight, out) -> out.add(sight.live().trouble().isEmpty() ? 1 : 0)),
          gauge(
              "store_free_bytes",
              NONE,
              "Space that is left on the disk or card that holds the store.",
              (sight, out) -> sight.storeFreeBytes().ifPresent(out::add)),
          sinceStart("commits", "Commits to the store since the start.", Live::commits),
          sinceStart(
              "messages",
              "Messages and lines taken in from printers since the start.",
              Live::received),
          sinceStart(
              "readings",
              "Readings made of the messages and lines since the start.",
              Live::readings),
          counter(
              "rejected",
              List.of("reason"),
              "Messages, lines and readings since the start that could not be read or credited, by reason.",
              (sight, out) -> {
                for (Rejected.Reason reason : Rejected.Reason.values()) {
                  out.add(
                      (double) sight.live().rejected().getOrDefault(reason, 0L), reason.label());
                }
              }));

  private AgentMetrics() {}

  private static ShopMetric sinceStart(String name, String help, ToLongFunction<Live> count) {
    return counter(
        name, NONE, help, (sight, out) -> out.add((double) count.applyAsLong(sight.live())));
  }
}
