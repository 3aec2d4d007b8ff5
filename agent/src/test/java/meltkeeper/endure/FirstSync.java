package meltkeeper.endure;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import meltkeeper.endure.LineShop.Line;

/**
 * A computer without a clock of its own was off for some hours, wakes in the past, and is told the
 * time while the agent runs already.
 */
public final class FirstSync extends LineOrdeal {

  private static final long LONGEST_OFF_SECONDS = TimeUnit.HOURS.toSeconds(11);

  public FirstSync() {
    super(
        "no clock of its own: off for up to 11 hours, then woken up to ten years in the past, set later",
        20,
        "log: “the computer's clock was set forward by … min”; the hours off are a gap, bridged");
  }

  @Override
  List<Change> changes(LineShop shop, Path folder, int tries, Random random) throws Exception {
    List<Change> changes = new ArrayList<>();
    for (int i = 0; i < tries; i++) {
      shop.begin(i);
      long off = random.nextLong(120, LONGEST_OFF_SECONDS);
      Line before;
      try (AgentProcess agent = shop.agent(-off)) {
        before = shop.further(LineShop.NOTHING);
        agent.kill();
      }
      try (AgentProcess agent = shop.agent(-off - random.nextLong(TimeUnit.DAYS.toSeconds(3652)))) {
        agent.awaitReady();
        Line woken = shop.further(before);
        agent.setWall(0);
        RampShop.until(
            "it is credited up to now",
            () -> shop.line().behindNow().compareTo(Duration.ofSeconds(20)) < 0);
        changes.add(new Change(before, shop.further(woken)));
        BrokerOrdeal.logged(agent, "clock was set forward");
      }
    }
    return changes;
  }
}
