package meltkeeper.endure;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import meltkeeper.endure.LineShop.Line;

/** The computer's clock jumps by up to ten years, back and forth, while the agent runs. */
public final class ClockJumps extends LineOrdeal {

  private static final long TEN_YEARS_SECONDS = TimeUnit.DAYS.toSeconds(3652);

  public ClockJumps() {
    super(
        "the computer's clock jumps by up to ten years, both ways",
        50,
        "nothing; swaps told meanwhile bear the wrong time");
  }

  @Override
  List<Change> changes(LineShop shop, Path folder, int tries, Random random) throws Exception {
    List<Change> changes = new ArrayList<>();
    try (AgentProcess agent = shop.agent(0)) {
      agent.awaitReady();
      shop.further(LineShop.NOTHING);
      // What was not set when the agent began may be set once, and is a gap then.
      agent.setWall(TimeUnit.MINUTES.toSeconds(10));
      RampShop.until("it is credited ahead", () -> shop.line().behindNow().toMinutes() < -8);
      Line before = shop.line();
      for (int i = 0; i < tries; i++) {
        agent.setWall(random.nextLong(-TEN_YEARS_SECONDS, TEN_YEARS_SECONDS));
        Line after = shop.further(before);
        changes.add(new Change(before, after));
        before = after;
      }
    }
    return changes;
  }
}
