package meltkeeper.outlook;

import java.util.List;
import java.util.Map;

/**
 * What lay ahead of all parts at one moment. Immutable.
 *
 * @param kinds by name
 */
record Outlook(long atNanos, long revision, Map<String, KindOutlook> kinds) {

  /** Before anything was reckoned. */
  static final Outlook NONE = new Outlook(Long.MIN_VALUE, Long.MIN_VALUE, Map.of());

  /** Every part that is on a hot end. */
  List<FittedOutlook> fitted() {
    return kinds.values().stream().flatMap(kind -> kind.fitted().stream()).toList();
  }
}
