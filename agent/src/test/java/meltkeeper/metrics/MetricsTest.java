package meltkeeper.metrics;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import meltkeeper.jam.Detector;
import meltkeeper.jam.Level;
import meltkeeper.jam.Outlook;
import meltkeeper.ledger.Tally;
import meltkeeper.part.Exposure;
import meltkeeper.pipeline.HotEndLive;
import meltkeeper.pipeline.Live;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Rejected;
import org.junit.jupiter.api.Test;

class MetricsTest {

  private static final Tally TALLY =
      new Tally(
          Exposure.of(217, 2).plus(Exposure.of(226, 1)),
          60_000_000_000L,
          0,
          0,
          3600_000_000_000L,
          12_500_000,
          12_250_000);

  private static Sight sight() {
    HotEndLive heron =
        new HotEndLive(
            HotEnd.first("heron"),
            0,
            OptionalDouble.of(214.9),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            "",
            "",
            OptionalDouble.empty(),
            TALLY,
            new Outlook(
                Level.NARROWING,
                Map.of(Detector.FEED_RATIO, 1.25),
                "fed too little",
                Optional.empty(),
                Optional.empty()),
            0);
    return new Sight(
        new Live(
            List.of(heron),
            10,
            20,
            Map.of(Rejected.Reason.LATE, 3L),
            List.of(),
            1,
            Optional.empty()),
        List.of(
            new FittedPart(
                "L-014", "liner", HotEnd.first("heron"), Exposure.of(217, 2), 12_250_000)),
        List.of(
            new PartForecast(
                "L-014",
                "liner",
                HotEnd.first("heron"),
                7000,
                OptionalDouble.of(0.02),
                OptionalDouble.of(0.14),
                OptionalDouble.of(864_000))),
        Map.of("shop", true),
        List.of(new RouteSight("phone", 7, 3, 1, 2, false)));
  }

  @Test
  void scrape_showsTheShopsSeriesInBaseUnits() {
    try (Metrics metrics = new Metrics(MetricsTest::sight)) {
      assertThat(metrics.scrape().lines())
          .contains(
              "meltkeeper_hot_end_hot_seconds_total{band=\"215-220\",hot_end=\"0\",printer=\"heron\"} 7200.0",
              "meltkeeper_hot_end_hot_seconds_total{band=\"225-230\",hot_end=\"0\",printer=\"heron\"} 3600.0",
              "meltkeeper_bridged_seconds_total{hot_end=\"0\",printer=\"heron\"} 60.0",
              "meltkeeper_filament_commanded_meters_total{hot_end=\"0\",printer=\"heron\"} 12.5",
              "meltkeeper_hot_end_celsius{hot_end=\"0\",printer=\"heron\"} 214.9",
              "meltkeeper_jam_level{hot_end=\"0\",printer=\"heron\"} 1.0",
              "meltkeeper_jam_evidence{detector=\"feed-ratio\",hot_end=\"0\",printer=\"heron\"} 1.25",
              "meltkeeper_part_hot_seconds{band=\"215-220\",hot_end=\"0\",kind=\"liner\",part=\"L-014\",printer=\"heron\"} 7200.0",
              "meltkeeper_part_filament_meters{hot_end=\"0\",kind=\"liner\",part=\"L-014\",printer=\"heron\"} 12.25",
              "meltkeeper_part_reference_seconds{hot_end=\"0\",kind=\"liner\",part=\"L-014\",printer=\"heron\"} 7000.0",
              "meltkeeper_part_failure_probability{horizon=\"7d\",hot_end=\"0\",kind=\"liner\",part=\"L-014\",printer=\"heron\"} 0.14",
              "meltkeeper_part_replace_in_seconds{hot_end=\"0\",kind=\"liner\",part=\"L-014\",printer=\"heron\"} 864000.0",
              "meltkeeper_source_up{source=\"shop\"} 1.0",
              "meltkeeper_alerts_total{outcome=\"delivered\",route=\"phone\"} 7.0",
              "meltkeeper_alerts_total{outcome=\"failed\",route=\"phone\"} 3.0",
              "meltkeeper_alerts_total{outcome=\"dead\",route=\"phone\"} 1.0",
              "meltkeeper_alerts_waiting{route=\"phone\"} 2.0",
              "meltkeeper_alert_route_up{route=\"phone\"} 0.0",
              "meltkeeper_readings_total 20.0",
              "meltkeeper_rejected_total{reason=\"late\"} 3.0",
              "meltkeeper_rejected_total{reason=\"torn-line\"} 0.0");
    }
  }

  @Test
  void scrape_leavesOutWhatWasNeverHeard() {
    try (Metrics metrics = new Metrics(MetricsTest::sight)) {
      assertThat(metrics.scrape()).doesNotContain("meltkeeper_hot_end_target_celsius{");
    }
  }

  @Test
  void documentedMetrics_areThoseThatAreServed() throws IOException {
    Set<String> documented =
        Files.readAllLines(Path.of("../docs/metrics.md")).stream()
            .filter(line -> line.startsWith("| `"))
            .map(line -> "meltkeeper_" + line.substring(3, line.indexOf('`', 3)))
            .collect(Collectors.toSet());
    try (Metrics metrics = new Metrics(MetricsTest::sight)) {
      Set<String> served =
          metrics
              .scrape()
              .lines()
              .filter(line -> line.startsWith("# TYPE meltkeeper_"))
              .map(line -> line.substring("# TYPE ".length(), line.lastIndexOf(' ')))
              .collect(Collectors.toSet());
      assertThat(served).isNotEmpty().allMatch(documented::contains);
      assertThat(documented).containsAll(served);
      assertThat(documented)
          .isEqualTo(ShopMetric.ALL.stream().map(MetricsTest::nameOf).collect(Collectors.toSet()));
    }
  }

  private static String nameOf(ShopMetric metric) {
    return "meltkeeper_"
        + metric.name()
        + (metric.form() == ShopMetric.Form.COUNTER ? "_total" : "");
  }
}
