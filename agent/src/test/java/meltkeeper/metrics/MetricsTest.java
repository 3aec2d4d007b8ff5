package meltkeeper.metrics;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import meltkeeper.testing.Tool;
import org.junit.jupiter.api.Test;

class MetricsTest {

  @Test
  void scrape_showsTheShopsSeriesInBaseUnits() {
    try (Metrics metrics = new Metrics(FullSight::of)) {
      assertThat(metrics.scrape(Exposition.PROMETHEUS_TEXT).lines())
          .contains(
              "meltkeeper_hot_end_hot_seconds_total{band=\"215-220\",hot_end=\"0\",printer=\"heron\"} 7200.0",
              "meltkeeper_hot_end_hot_seconds_total{band=\"225-230\",hot_end=\"0\",printer=\"heron\"} 3600.0",
              "meltkeeper_bridged_seconds_total{hot_end=\"0\",printer=\"heron\"} 60.0",
              "meltkeeper_filament_commanded_meters_total{hot_end=\"0\",printer=\"heron\"} 12.5",
              "meltkeeper_hot_end_celsius{hot_end=\"0\",printer=\"heron\"} 214.9",
              "meltkeeper_hot_end_threshold_celsius{hot_end=\"0\",printer=\"heron\"} 150.0",
              "meltkeeper_hot_end_limit_celsius{hot_end=\"0\",printer=\"heron\"} 250.0",
              "meltkeeper_hot_end_printing{hot_end=\"0\",printer=\"heron\"} 1.0",
              "meltkeeper_hot_end_silent_seconds{hot_end=\"0\",printer=\"heron\"} 1.5",
              "meltkeeper_jam_level{hot_end=\"0\",printer=\"heron\"} 1.0",
              "meltkeeper_jam_evidence{detector=\"feed-ratio\",hot_end=\"0\",printer=\"heron\"} 1.25",
              "meltkeeper_part_fitted{hot_end=\"0\",kind=\"liner\",part=\"L-014\",printer=\"heron\"} 1.0",
              "meltkeeper_part_fitted{hot_end=\"0\",kind=\"liner\",part=\"L-007\",printer=\"heron\"} 0.0",
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
              "meltkeeper_alert_route_full{route=\"phone\"} 0.0",
              "meltkeeper_alert_route_up{route=\"phone\"} 0.0",
              "meltkeeper_store_free_bytes 5.0E9",
              "meltkeeper_readings_total 20.0",
              "meltkeeper_rejected_total{reason=\"late\"} 3.0",
              "meltkeeper_rejected_total{reason=\"torn-line\"} 0.0");
    }
  }

  @Test
  void scrape_leavesOutWhatWasNeverHeard() {
    try (Metrics metrics = new Metrics(FullSight::of)) {
      assertThat(metrics.scrape(Exposition.PROMETHEUS_TEXT))
          .contains("meltkeeper_hot_end_target_celsius{hot_end=\"0\",printer=\"heron\"}")
          .doesNotContain("meltkeeper_hot_end_target_celsius{hot_end=\"0\",printer=\"ibis\"}");
    }
  }

  @Test
  void scrape_asOpenMetrics_endsAsItsStandardWants() {
    try (Metrics metrics = new Metrics(FullSight::of)) {
      assertThat(metrics.scrape(Exposition.OPEN_METRICS))
          .contains("# TYPE meltkeeper_readings counter\n", "\nmeltkeeper_readings_total 20.0\n")
          .endsWith("# EOF\n");
    }
  }

  @Test
  void everyMetric_inTheFullSight_hasASeries() {
    try (Metrics metrics = new Metrics(FullSight::of)) {
      String text = metrics.scrape(Exposition.PROMETHEUS_TEXT);
      for (ShopMetric metric : ShopMetrics.ALL) {
        assertThat(text).containsPattern("(?m)^" + metric.fullName() + "[{ ]");
      }
    }
  }

  @Test
  void names_underPrometheusOwnRules_areClean() throws IOException, InterruptedException {
    try (Metrics metrics = new Metrics(FullSight::of)) {
      assertThat(
              Tool.find("promtool")
                  .runOn(metrics.scrape(Exposition.PROMETHEUS_TEXT), "check", "metrics"))
          .isEqualTo(new Tool.Answer(0, ""));
    }
  }

  @Test
  void printerThatIsNotListed_hasNoSeries() {
    try (Metrics metrics = new Metrics(FullSight::of)) {
      assertThat(FullSight.of().live().unknownPrinters()).contains("stork");
      assertThat(metrics.scrape(Exposition.PROMETHEUS_TEXT)).doesNotContain("stork");
    }
  }
}
