package meltkeeper.metrics;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ExpositionTest {

  /** What Prometheus 2.42 was seen to send here. */
  private static final String PROMETHEUS =
      "application/openmetrics-text;version=1.0.0,application/openmetrics-text;version=0.0.1;q=0.75,"
          + "text/plain;version=0.0.4;q=0.5,*/*;q=0.1";

  @ParameterizedTest
  @ValueSource(
      strings = {
        PROMETHEUS,
        "application/openmetrics-text",
        "Application/OpenMetrics-Text; Version=\"1.0.0\"; charset=utf-8",
        "text/plain;q=0.3, application/openmetrics-text;q=0.4",
        "text/plain;q=0, */*"
      })
  void preferred_whereOpenMetricsIsLikedBest_isOpenMetrics(String accept) {
    assertThat(Exposition.preferred(Optional.of(accept))).isEqualTo(Exposition.OPEN_METRICS);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "*/*",
        "text/html,application/xhtml+xml,application/xml;q=0.9,*/*;q=0.8",
        "text/plain",
        "text/plain;version=0.0.4",
        "application/openmetrics-text;q=0",
        "application/openmetrics-text;version=0.0.1",
        "application/openmetrics-text;q=0.2,text/*;q=0.5",
        "application/json",
        ";;;q=,,"
      })
  void preferred_elsewhere_isPrometheusText(String accept) {
    assertThat(Exposition.preferred(Optional.of(accept))).isEqualTo(Exposition.PROMETHEUS_TEXT);
  }

  @Test
  void preferred_withoutTheHeader_isPrometheusText() {
    assertThat(Exposition.preferred(Optional.empty())).isEqualTo(Exposition.PROMETHEUS_TEXT);
  }
}
