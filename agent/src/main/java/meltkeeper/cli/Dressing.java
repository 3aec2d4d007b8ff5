package meltkeeper.cli;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Function;
import meltkeeper.alert.RouteState;
import meltkeeper.desk.PartHeat;
import meltkeeper.ledger.Limits;
import meltkeeper.ledger.Tally;
import meltkeeper.metrics.HotEndSight;
import meltkeeper.metrics.PartForecast;
import meltkeeper.metrics.RouteSight;
import meltkeeper.metrics.ShownPart;
import meltkeeper.outlook.FittedOutlook;
import meltkeeper.part.Fitting;
import meltkeeper.pipeline.HotEndLive;
import meltkeeper.pipeline.Live;
import meltkeeper.protocol.HotEnd;

/** Dresses what the rooms answer for those who show it. */
final class Dressing {

  private static final double SECONDS_AN_HOUR = 3600;

  private Dressing() {}

  static Map<HotEnd, Tally> totals(Live live) {
    Map<HotEnd, Tally> totals = new HashMap<>();
    for (HotEndLive hotEnd : live.hotEnds()) {
      totals.put(hotEnd.hotEnd(), hotEnd.total());
    }
    return totals;
  }

  /**
   * The parts that a scrape shows.
   *
   * @param removedAfterNanos parts that were taken off after it are shown, too
   */
  static List<ShownPart> parts(List<PartHeat> heats, long removedAfterNanos) {
    List<ShownPart> parts = new ArrayList<>();
    for (PartHeat heat : heats) {
      List<Fitting> stays = heat.part().fittings();
      if (!stays.isEmpty()) {
        Fitting last = stays.get(stays.size() - 1);
        if (last.until() > removedAfterNanos) {
          parts.add(
              new ShownPart(
                  heat.part().id(),
                  heat.part().kind(),
                  last.hotEnd(),
                  last.isOpen(),
                  heat.tally().exposure(),
                  filament(heat.tally())));
        }
      }
    }
    return parts;
  }

  /**
   * The hot ends that a scrape shows.
   *
   * @param nowSteadyNanos on the clock of arrivals
   * @param limits what each hot end goes by
   * @param limitsCelsius by kind, of those that have one
   */
  static List<HotEndSight> hotEnds(
      Live live,
      List<ShownPart> parts,
      long nowSteadyNanos,
      Function<HotEnd, Limits> limits,
      Map<String, Double> limitsCelsius) {
    Map<HotEnd, Double> least = new HashMap<>();
    for (ShownPart part : parts) {
      Double limit = limitsCelsius.get(part.kind());
      if (part.isFitted() && limit != null) {
        least.merge(part.hotEnd(), limit, Math::min);
      }
    }
    return live.hotEnds().stream()
        .map(
            end ->
                new HotEndSight(
                    end,
                    end.heardNanos() == Long.MIN_VALUE
                        ? OptionalLong.empty()
                        : OptionalLong.of(Math.max(0, nowSteadyNanos - end.heardNanos())),
                    limits.apply(end.hotEnd()).hotAboveCelsius(),
                    least.containsKey(end.hotEnd())
                        ? OptionalDouble.of(least.get(end.hotEnd()))
                        : OptionalDouble.empty()))
        .toList();
  }

  static List<PartForecast> forecasts(List<FittedOutlook> parts) {
    return parts.stream()
        .map(
            part ->
                new PartForecast(
                    part.id(),
                    part.kind(),
                    part.hotEnd(),
                    SECONDS_AN_HOUR * part.ageHours().mean(),
                    part.within24Hours(),
                    part.within7Days(),
                    part.due().isPresent()
                        ? OptionalDouble.of(SECONDS_AN_HOUR * part.due().get().hours())
                        : OptionalDouble.empty()))
        .toList();
  }

  /** What was seen to move, or what was asked for where nothing sees it. */
  private static long filament(Tally tally) {
    return tally.measuredMicrometres() > 0
        ? tally.measuredMicrometres()
        : tally.commandedMicrometres();
  }

  static List<RouteSight> routes(List<RouteState> states) {
    return states.stream()
        .map(
            route ->
                new RouteSight(
                    route.name(),
                    route.delivered(),
                    route.failed(),
                    route.dead(),
                    route.waiting(),
                    route.isFull(),
                    route.trouble().isEmpty()))
        .toList();
  }

  /** By route: that it is full, and why its last try failed; empty while all is well. */
  static Map<String, String> troubles(List<RouteState> states) {
    Map<String, String> troubles = new HashMap<>();
    states.forEach(route -> troubles.put(route.name(), trouble(route)));
    return troubles;
  }

  private static String trouble(RouteState route) {
    String last = route.trouble().orElse("");
    if (!route.isFull()) {
      return last;
    }
    return route.waiting()
        + " alerts wait, which is all that may; the oldest are given up"
        + (last.isEmpty() ? "" : ": " + last);
  }
}
