package meltkeeper.store;

import java.util.List;
import java.util.Optional;

/**
 * An alert as it is kept.
 *
 * @param deliveries by route; none for history
 * @param acknowledged of its episode
 */
public record AlertEntry(
    Alert alert, List<Delivery> deliveries, Optional<Acknowledgement> acknowledged) {

  public AlertEntry {
    deliveries = List.copyOf(deliveries);
  }
}
