package meltkeeper.endure;

import java.util.List;

/** All kinds of fault that are tried, in the order of the table. */
public final class Ordeals {

  private Ordeals() {}

  public static List<Ordeal> all() {
    return List.of(
        new Killed(),
        new PowerCut(),
        new FullDisk(),
        new ReadOnlyDisk(),
        new BrokerAway(),
        new Flood(),
        new Duplicates(),
        new NetworkSplit(),
        new Unplugged(),
        new ClockJumps(),
        new FirstSync(),
        new TimeZones(),
        new DeletedStore(),
        new DamagedStore(),
        new TwoAgents());
  }
}
