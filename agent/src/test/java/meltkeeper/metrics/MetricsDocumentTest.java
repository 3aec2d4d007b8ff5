package meltkeeper.metrics;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import meltkeeper.testing.Generated;
import org.junit.jupiter.api.Test;

/** The tables of {@code docs/metrics.md} are made from the metrics' own words. */
class MetricsDocumentTest {

  @Test
  void tables_inTheDocument_areThoseOfTheCode() throws IOException {
    Generated document = Generated.file(Path.of("../docs/metrics.md"));
    document
        .withSection("hot-ends", table(HotEndMetrics.ALL))
        .withSection("parts", table(PartMetrics.ALL))
        .withSection("agent", table(AgentMetrics.ALL))
        .check();
  }

  private static String table(List<ShopMetric> metrics) {
    return metrics.stream()
        .map(
            metric ->
                "| `%s` | %s | %s |%n"
                    .formatted(
                        metric.fullName(), String.join(", ", metric.labels()), metric.help()))
        .collect(Collectors.joining("", "| name | labels | what it tells |\n|---|---|---|\n", ""));
  }
}
