package meltkeeper.cli;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import meltkeeper.desk.PartHeat;
import meltkeeper.ledger.Tally;
import meltkeeper.metrics.FittedPart;
import meltkeeper.part.Ending;
import meltkeeper.part.Exposure;
import meltkeeper.part.Part;
import meltkeeper.pipeline.HotEndLive;
import meltkeeper.pipeline.Live;
import meltkeeper.protocol.HotEnd;
import meltkeeper.web.Overview;
import meltkeeper.web.PartView;

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

  static Overview overview(Live live, List<PartHeat> heats, Map<String, Boolean> sources) {
    return Overview.of(live, heats.stream().map(Dressing::view).toList(), sources);
  }

  private static PartView view(PartHeat heat) {
    Part part = heat.part();
    return new PartView(
        part.id(),
        part.kind(),
        part.fittedOn().map(HotEnd::toString),
        standing(part.ending()),
        tenths(heat.tally().exposure().hotHours()),
        hottestBand(heat.tally().exposure()),
        tenths(filament(heat.tally()) / 1e6));
  }

  private static String standing(Ending ending) {
    return ending instanceof Ending.Failed failed
        ? "failed: " + failed.because().word()
        : ((Ending.Censored) ending).why().name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  private static Optional<String> hottestBand(Exposure exposure) {
    return exposure.bands().entrySet().stream()
        .max(
            java.util.Comparator.comparingLong(
                (Map.Entry<Integer, Exposure.Heat> entry) -> entry.getValue().nanos()))
        .map(entry -> Exposure.bandName(entry.getKey()) + " °C");
  }

  private static String tenths(double value) {
    return BigDecimal.valueOf(value).setScale(1, RoundingMode.HALF_UP).toPlainString();
  }
}
