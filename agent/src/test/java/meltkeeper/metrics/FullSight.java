package meltkeeper.metrics;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import meltkeeper.jam.Detector;
import meltkeeper.jam.Level;
import meltkeeper.jam.Outlook;
import meltkeeper.ledger.Tally;
import meltkeeper.part.Exposure;
import meltkeeper.pipeline.HotEndLive;
import meltkeeper.pipeline.Live;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.Rejected;

/** A shop of two printers in which every metric has something to show. */
public final class FullSight {

  private static final HotEnd HERON = HotEnd.first("heron");
  private static final Tally TALLY =
      new Tally(
          Exposure.of(217, 2).plus(Exposure.of(226, 1)),
          60_000_000_000L,
          0,
          0,
          3600_000_000_000L,
          12_500_000,
          12_250_000);

  private FullSight() {}

  /** All that a scrape may show. */
  public static Sight of() {
    HotEndLive heron =
        hotEnd(
            HERON,
            OptionalDouble.of(225),
            Optional.of(JobState.PRINTING),
            new Outlook(
                Level.NARROWING,
                Map.of(Detector.FEED_RATIO, 1.25),
                "fed too little",
                Optional.empty(),
                Optional.empty()));
    HotEndLive ibis =
        hotEnd(
            HotEnd.first("ibis"),
            OptionalDouble.empty(),
            Optional.empty(),
            new Outlook(Level.BLIND, Map.of(), "", Optional.empty(), Optional.empty()));
    return new Sight(
        new Live(
            List.of(heron, ibis),
            10,
            20,
            Map.of(Rejected.Reason.LATE, 3L),
            List.of("stork"),
            1,
            Optional.empty()),
        List.of(
            new HotEndSight(heron, OptionalLong.of(1_500_000_000L), 150, OptionalDouble.of(250)),
            new HotEndSight(ibis, OptionalLong.empty(), 150, OptionalDouble.empty())),
        List.of(
            new ShownPart("L-014", "liner", HERON, true, Exposure.of(217, 2), 12_250_000),
            new ShownPart("L-007", "liner", HERON, false, Exposure.of(217, 400), 900_000_000)),
        List.of(
            new PartForecast(
                "L-014",
                "liner",
                HERON,
                7000,
                OptionalDouble.of(0.02),
                OptionalDouble.of(0.14),
                OptionalDouble.of(864_000))),
        Map.of("shop", true),
        List.of(new RouteSight("phone", 7, 3, 1, 2, false, false)),
        OptionalLong.of(5_000_000_000L));
  }

  private static HotEndLive hotEnd(
      HotEnd name, OptionalDouble targetCelsius, Optional<JobState> state, Outlook watch) {
    return new HotEndLive(
        name,
        0,
        OptionalDouble.of(214.9),
        targetCelsius,
        OptionalDouble.empty(),
        state,
        "",
        "",
        OptionalDouble.empty(),
        TALLY,
        watch,
        0);
  }
}
