package meltkeeper.source.mqtt;

import java.time.Duration;
import java.util.UUID;

/**
 * Under which name a broker knows us, and how long it keeps for us what we miss. Two clients of one
 * name throw each other off the broker, so each process needs a name of its own.
 *
 * @param clientId used where the broker's settings name none
 * @param keptFor zero when nothing is to be kept. MQTT 3.1.1 knows no such time: there, anything
 *     above zero is kept until the broker forgets it
 */
public record Session(String clientId, Duration keptFor) {

  private static final Duration ONE_DAY = Duration.ofDays(1);

  public Session {
    if (clientId.isEmpty() || keptFor.isNegative()) {
      throw new IllegalArgumentException(
          "client id \"" + clientId + "\" kept for " + keptFor + "; allowed: a name, zero or more");
    }
  }

  /**
   * What an agent needs: a short absence loses nothing.
   *
   * @param installation a short name that stays the same over restarts, and differs from any other
   *     installation's
   */
  public static Session kept(String installation, String broker) {
    return new Session("meltkeeper-" + installation + "-" + broker, ONE_DAY);
  }

  /** What a passing listener needs: it disturbs no agent, and leaves nothing behind. */
  public static Session passing() {
    String unique = UUID.randomUUID().toString().substring(0, 8);
    return new Session("meltkeeper-passing-" + unique, Duration.ZERO);
  }

  boolean isKept() {
    return !keptFor.isZero();
  }
}
