package meltkeeper.config;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import meltkeeper.metrics.MetricsSettings;
import meltkeeper.metrics.otlp.OtlpSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MetricsConfigurationTest {

  private static final String SHOP =
      """
      printers:
        ibis: { from: { serial: /dev/ttyUSB0 } }
      """;

  @TempDir private Path folder;

  @Test
  void metrics_notNamed_areKeptForAQuarterOfAnHourAndPushedNowhere() {
    assertThat(Shop.settings(SHOP).metrics())
        .isEqualTo(new MetricsSettings(Duration.ofMinutes(15), Optional.empty()));
  }

  @Test
  void otlp_named_isReadWhole() throws IOException {
    Path token = Shop.secret(folder.resolve("token"), "a-token");
    String text =
        SHOP
            + """
            metrics:
              keep-removed: 2h
              otlp:
                url: "https://collector.shop.example/v1/metrics"
                every: 30s
                headers: { X-Shop: birds }
                token-file: %s
                timeout: 3s
            """
                .formatted(token);
    assertThat(Shop.settings(text).metrics())
        .isEqualTo(
            new MetricsSettings(
                Duration.ofHours(2),
                Optional.of(
                    new OtlpSettings(
                        URI.create("https://collector.shop.example/v1/metrics"),
                        Duration.ofSeconds(30),
                        Map.of("X-Shop", "birds"),
                        Optional.of(token),
                        Duration.ofSeconds(3)))));
  }

  @Test
  void otlp_withoutAddressAndWithAWrongInterval_tellsBoth() {
    assertThat(Shop.words(SHOP + "metrics: { otlp: { every: 10ms, path: / } }\n"))
        .contains(
            "metrics.otlp.url: found \"nothing\"; allowed: http://host or https://host",
            "metrics.otlp.every: found \"10ms\"; allowed: 1s to 1d",
            "metrics.otlp.path: found \"the key path\"; allowed: url, every, headers, token-file, timeout");
  }
}
