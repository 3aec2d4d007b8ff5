package meltkeeper.pipeline;

import java.util.EnumMap;
import java.util.Map;
import meltkeeper.protocol.Rejected;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Tells of rejections without flooding: the first of each reason, then the 10th, 100th and so on.
 */
final class RejectionLog {

  private static final Logger LOG = LoggerFactory.getLogger("meltkeeper.rejected");

  private final Map<Rejected.Reason, Long> counts = new EnumMap<>(Rejected.Reason.class);
  private final Map<Rejected.Reason, Long> next = new EnumMap<>(Rejected.Reason.class);

  void tell(Rejected rejected) {
    long count = counts.merge(rejected.reason(), 1L, Long::sum);
    if (count >= next.getOrDefault(rejected.reason(), 1L)) {
      next.put(rejected.reason(), count * 10);
      LOG.warn("{} (number {}): {}", rejected.reason().label(), count, rejected.detail());
    }
  }
}
