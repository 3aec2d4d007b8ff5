package meltkeeper.endure;

import java.nio.file.Path;
import java.util.Random;

/** A fault that befalls an agent while readings come over a real broker, some times in a row. */
abstract class BrokerOrdeal implements Ordeal {

  /** Enough readings to be sure that the agent hears again. */
  static final int SOME = 20;

  private final String fault;
  private final int most;

  /**
   * @param fault in words
   * @param most how often it is tried at most, for it takes a while
   */
  BrokerOrdeal(String fault, int most) {
    this.fault = fault;
    this.most = most;
  }

  @Override
  public final String fault() {
    return fault;
  }

  /**
   * Lets the fault happen once, and pass.
   *
   * @return the books after it, everything published being credited
   */
  abstract Books once(RampShop shop, AgentProcess agent, Random random) throws Exception;

  /** What the owner sees; called at the end, while the agent runs. */
  abstract String seen(AgentProcess agent) throws Exception;

  /** The shop, whose broker and printer are there. */
  RampShop shop(Path folder) throws Exception {
    return new RampShop(folder, new Ramp(1e-4));
  }

  /** The agent as it begins. */
  AgentProcess agent(RampShop shop) throws Exception {
    return shop.agent();
  }

  @Override
  public final Tried endure(int times, long seed, Path folder) throws Exception {
    int tries = Math.min(times, most);
    Random random = new Random(seed);
    try (RampShop shop = shop(folder);
        AgentProcess agent = agent(shop)) {
      agent.awaitReady();
      RampShop.until("it has connected", () -> agent.logged().contains("connected to"));
      long lost = 0;
      long doubled = 0;
      for (int i = 0; i < tries; i++) {
        shop.publish(SOME);
        Books books = once(shop, agent, random);
        lost += books.lostNanos();
        doubled += books.doubledNanos();
        if (!agent.isAlive()) {
          throw new AssertionError("the agent ended:\n" + agent.logged());
        }
      }
      return new Tried(fault, tries, lost, doubled, seen(agent));
    }
  }

  /** Checks that the log has words; gives them between quotes. */
  static String logged(AgentProcess agent, String words) throws Exception {
    RampShop.until("the log says " + words, () -> agent.logged().contains(words));
    return "log: “" + words + "”";
  }

  /** Checks that a line stands in {@code /metrics}; gives its name and value. */
  static String measured(AgentProcess agent, String line) throws Exception {
    RampShop.until(line, () -> agent.get("/metrics").lines().anyMatch(l -> l.startsWith(line)));
    return "`" + line + "`";
  }
}
