package meltkeeper.endure;

import java.io.IOException;
import java.util.Random;

/** A second agent is started on the same store. */
public final class TwoAgents extends BrokerOrdeal {

  public TwoAgents() {
    super("a second agent on one store", 20);
  }

  @Override
  Books once(RampShop shop, AgentProcess agent, Random random) throws Exception {
    try (AgentProcess second =
        AgentProcess.run(shop.config(), shop.state().resolve("second.log"))) {
      shop.publish(SOME);
      if (second.exitCode() != 1) {
        throw new AssertionError("the second agent ended with " + second.exitCode());
      }
      refused(second);
    }
    shop.publish(SOME);
    return shop.untilCredited();
  }

  private static void refused(AgentProcess second) throws IOException {
    if (!second.logged().contains("is writing to it")) {
      throw new AssertionError("the second agent says:\n" + second.logged());
    }
  }

  @Override
  String seen(AgentProcess agent) {
    return "the second ends with 1: “process … is writing to it; stop that process first”";
  }
}
