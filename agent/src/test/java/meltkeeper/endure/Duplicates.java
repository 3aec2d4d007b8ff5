package meltkeeper.endure;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import meltkeeper.testing.Publisher;

/** Every message comes up to four times, and what comes again comes in any order. */
public final class Duplicates extends BrokerOrdeal {

  public Duplicates() {
    super("messages twice to four times, the copies in any order", 200);
  }

  @Override
  Books once(RampShop shop, AgentProcess agent, Random random) throws Exception {
    long first = shop.published();
    shop.publish(SOME);
    List<Long> again = new ArrayList<>(LongStream.range(first, shop.published()).boxed().toList());
    for (int copy = random.nextInt(3); copy >= 0; copy--) {
      java.util.Collections.shuffle(again, random);
      try (Publisher publisher = new Publisher(shop.broker().url())) {
        for (long number : again) {
          publisher.publish(RampShop.TOPIC, shop.ramp().payload(number));
        }
      }
    }
    shop.publish(1);
    return shop.untilCredited();
  }

  @Override
  String seen(AgentProcess agent) throws Exception {
    measured(agent, "meltkeeper_rejected_total{reason=\"late\"}");
    return "`rejected_total{reason=\"late\"}` and `\"duplicate\"` rise";
  }
}
