package meltkeeper.endure;

import java.util.Random;

/**
 * The broker is gone for up to twelve hours of the printer's time; what the printer says meanwhile
 * nobody gets.
 */
public final class BrokerAway extends BrokerOrdeal {

  private static final int READINGS_AN_HOUR = 720;

  public BrokerAway() {
    super("broker gone for up to 11 hours", 20);
  }

  @Override
  Books once(RampShop shop, AgentProcess agent, Random random) throws Exception {
    shop.untilCredited();
    shop.broker().stop();
    shop.skip(random.nextInt(11 * READINGS_AN_HOUR));
    measured(agent, "meltkeeper_source_up{source=\"shop\"} 0");
    shop.broker().start();
    measured(agent, "meltkeeper_source_up{source=\"shop\"} 1");
    shop.publish(SOME);
    return shop.untilCredited();
  }

  @Override
  String seen(AgentProcess agent) throws Exception {
    return logged(agent, "trying again until it works") + ", `source_up` 0; hours bridged";
  }
}
