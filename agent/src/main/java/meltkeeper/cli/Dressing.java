package meltkeeper.cli;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import meltkeeper.alert.RouteState;
import meltkeeper.desk.PartHeat;
import meltkeeper.ledger.Tally;
import meltkeeper.metrics.FittedPart;
import meltkeeper.metrics.PartForecast;
import meltkeeper.metrics.RouteSight;
import meltkeeper.outlook.FittedOutlook;
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

  static List<FittedPart> fitted(List<PartHeat> heats) {
    List<FittedPart> fitted = new ArrayList<>();
    for (PartHeat heat : heats) {
      heat.part()
          .fittedOn()
          .ifPresent(
              hotEnd ->
                  fitted.add(
                      new FittedPart(
                          heat.part().id(),
                          heat.part().kind(),
                          hotEnd,
                          heat.tally().exposure(),
                          filament(heat.tally()))));
    }
    return fitted;
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
                    route.trouble().isEmpty()))
        .toList();
  }

  /** By route: why its last try failed, empty while all is well. */
  static Map<String, String> troubles(List<RouteState> states) {
    Map<String, String> troubles = new HashMap<>();
    states.forEach(route -> troubles.put(route.name(), route.trouble().orElse("")));
    return troubles;
  }
}
