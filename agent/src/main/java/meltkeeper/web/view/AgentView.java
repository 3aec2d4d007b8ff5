package meltkeeper.web.view;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import meltkeeper.desk.Desk;
import meltkeeper.desk.PartFilter;
import meltkeeper.desk.PartLine;
import meltkeeper.desk.Shop;
import meltkeeper.desk.When;
import meltkeeper.ledger.Tally;
import meltkeeper.outlook.GcodeBatch;
import meltkeeper.outlook.OutlookDesk;
import meltkeeper.pipeline.HotEndLive;
import meltkeeper.pipeline.Live;
import meltkeeper.pipeline.Minute;
import meltkeeper.protocol.HotEnd;

/** What page and API ask the agent for. Safe for any thread. */
public interface AgentView {

  /** What stands now. */
  Live live();

  /** The last day of a hot end, minute by minute. */
  List<Minute> trail(HotEnd hotEnd);

  /** By name of a source: true while it is connected. */
  Map<String, Boolean> sources();

  /** By route of alerts: why its last try failed, empty while all is well. */
  Map<String, String> routeTroubles();

  /** Where questions are answered and acts are noted. */
  Desk desk();

  /** What lies ahead. */
  OutlookDesk outlook();

  /** What the configuration says of the shop. */
  Shop shop();

  /** Reads a G-code file for a printer of the shop. */
  GcodeBatch gcode(String printer, String fileName);

  /** Above this a hot end is hot, °C. */
  double hotAboveCelsius(HotEnd hotEnd);

  /** The wall clock, nanoseconds since 1970. */
  long nowNanos();

  /** Reads times as this shop tells them. */
  default When when() {
    return new When(shop().zone(), nowNanos());
  }

  /**
   * The parts that a filter lets through, up to this moment.
   *
   * @throws meltkeeper.desk.RefusedException for a kind or printer that is not in the configuration
   */
  default List<PartLine> parts(PartFilter filter) {
    Map<HotEnd, Tally> totals = new HashMap<>();
    for (HotEndLive hotEnd : live().hotEnds()) {
      totals.put(hotEnd.hotEnd(), hotEnd.total());
    }
    return desk().parts().parts(filter, totals, nowNanos());
  }
}
