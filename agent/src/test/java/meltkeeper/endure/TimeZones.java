package meltkeeper.endure;

import java.nio.file.Path;
import java.util.List;
import java.util.Random;

/**
 * The computer is moved from time zone to time zone, across changes of daylight saving time: the
 * agent starts in another zone each time, and the readings run through a spring night.
 */
public final class TimeZones implements Ordeal {

  private static final int MOST = 20;
  private static final int HALF_A_DAY_READINGS = 8_000;

  private static final List<String> ZONES =
      List.of(
          "Europe/Berlin",
          "America/New_York",
          "Australia/Lord_Howe",
          "Pacific/Apia",
          "Asia/Kathmandu",
          "America/St_Johns",
          "Pacific/Kiritimati",
          "UTC");

  @Override
  public String fault() {
    return "time zone changed at each start, readings across a change of daylight saving time";
  }

  @Override
  public Tried endure(int times, long seed, Path folder) throws Exception {
    int tries = Math.min(times, MOST);
    Random random = new Random(seed);
    long lost = 0;
    long doubled = 0;
    try (RampShop shop = new RampShop(folder, new Ramp(1e-4))) {
      for (int i = 0; i < tries; i++) {
        String zone = ZONES.get(random.nextInt(ZONES.size()));
        try (AgentProcess agent = shop.agent(List.of("env", "TZ=" + zone))) {
          agent.awaitReady();
          RampShop.until("it has connected", () -> agent.logged().contains("connected to"));
          shop.publish(200);
          shop.skip(random.nextInt(HALF_A_DAY_READINGS));
          shop.publish(20);
          Books books = shop.untilCredited();
          lost += books.lostNanos();
          doubled += books.doubledNanos();
          agent.end();
        }
      }
    }
    return new Tried(fault(), tries, lost, doubled, "nothing; all is kept in UTC");
  }
}
