package meltkeeper.metrics;

import java.util.Collection;
import java.util.List;
import java.util.stream.Stream;

/** Every metric of the shop. */
final class ShopMetrics {

  static final List<ShopMetric> ALL =
      Stream.of(HotEndMetrics.ALL, PartMetrics.ALL, AgentMetrics.ALL)
          .flatMap(Collection::stream)
          .toList();

  private ShopMetrics() {}
}
