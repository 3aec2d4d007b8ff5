package meltkeeper.endure;

import java.nio.charset.StandardCharsets;
import java.util.Random;
import java.util.UUID;
import meltkeeper.testing.Publisher;

/**
 * A device in the shop's network floods the broker: nonsense, printers that nobody listed, large
 * payloads and one of 80 MB, on the topics that the agent listens to. The agent has a heap of 64
 * MB.
 */
public final class Flood extends BrokerOrdeal {

  private static final int MESSAGES = 3_000;

  /** Together far more than the agent's heap. */
  private static final int EVERY_SO_MANY_LARGE = 10;

  private static final int LARGE = 250_000;

  /** Longer than the agent's heap is large. */
  private static final int HUGE = 80_000_000;

  public Flood() {
    super(
        "a flood of 3,000 messages: nonsense, unknown printers, 75 MB of large payloads and one of 80 MB",
        20);
  }

  @Override
  Books once(RampShop shop, AgentProcess agent, Random random) throws Exception {
    String large = "9".repeat(LARGE);
    try (Publisher rogue = new Publisher(shop.broker().url())) {
      rogue.publish(RampShop.TOPIC, "9".repeat(HUGE));
      for (int i = 0; i < MESSAGES; i++) {
        byte[] noise = new byte[random.nextInt(300)];
        random.nextBytes(noise);
        String payload =
            i % EVERY_SO_MANY_LARGE == 0 ? large : new String(noise, StandardCharsets.ISO_8859_1);
        String printer = i % 2 == 0 ? "heron" : UUID.randomUUID().toString();
        rogue.publish("plant/" + printer + "/status", payload);
        if (i % 100 == 0) {
          shop.publish(1);
        }
      }
    }
    shop.publish(SOME);
    return shop.untilCredited();
  }

  @Override
  String seen(AgentProcess agent) throws Exception {
    measured(agent, "meltkeeper_rejected_total{reason=\"unknown-printer\"}");
    measured(agent, "meltkeeper_rejected_total{reason=\"torn-line\"}");
    measured(agent, "meltkeeper_rejected_total{reason=\"too-long\"}");
    return "`rejected_total` by reason; the page names unknown printers; log: one line a reason";
  }
}
