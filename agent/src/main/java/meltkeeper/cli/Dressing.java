package meltkeeper.cli;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import meltkeeper.desk.PartHeat;
import meltkeeper.ledger.Tally;
import meltkeeper.metrics.FittedPart;
import meltkeeper.pipeline.HotEndLive;
import meltkeeper.pipeline.Live;
import meltkeeper.protocol.HotEnd;

/** Dresses what the rooms answer for those who show it. */
final class Dressing {

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

  /** What was seen to move, or what was asked for where nothing sees it. */
  private static long filament(Tally tally) {
    return tally.measuredMicrometres() > 0
        ? tally.measuredMicrometres()
        : tally.commandedMicrometres();
  }
}
