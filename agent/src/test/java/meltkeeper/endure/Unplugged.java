package meltkeeper.endure;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import meltkeeper.endure.LineShop.Line;
import meltkeeper.testing.PseudoTerminal;

/** The printer's plug is pulled, and put back: its serial device vanishes and comes again. */
public final class Unplugged extends LineOrdeal {

  public Unplugged() {
    super(
        "printer unplugged from its serial port, and plugged in again",
        20,
        "log: “… trying again until it works”, `source_up` 0");
  }

  @Override
  List<Change> changes(LineShop shop, Path folder, int tries, Random random) throws Exception {
    PseudoTerminal terminal = new PseudoTerminal(folder, shop.printer().port());
    shop.connect("serial: " + terminal.device() + ", baud: 115200");
    terminal.plug();
    List<Change> changes = new ArrayList<>();
    try (AgentProcess agent = shop.agent(0)) {
      agent.awaitReady();
      Line before = shop.further(LineShop.NOTHING);
      for (int i = 0; i < tries; i++) {
        terminal.unplug();
        LockSupport.parkNanos(random.nextLong(TimeUnit.SECONDS.toNanos(3)));
        terminal.plug();
        Line after = shop.further(before);
        changes.add(new Change(before, after));
        before = after;
      }
      BrokerOrdeal.logged(agent, "trying again until it works");
    } finally {
      terminal.unplug();
    }
    return changes;
  }
}
