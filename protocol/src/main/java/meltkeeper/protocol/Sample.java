package meltkeeper.protocol;

/**
 * When and where something was sampled; shared by all readings that one message or line yields for
 * one hot end.
 *
 * @param hotEnd what was sampled
 * @param atNanos the time that counts: the printer's own if mapped, else that of arrival
 * @param arrivalNanos when it arrived here, on a clock that never steps
 * @param clock whose time {@code atNanos} is
 * @param retained true for a broker's retained message, which tells a state but no elapsed time
 */
public record Sample(
    HotEnd hotEnd, long atNanos, long arrivalNanos, Clock clock, boolean retained) {

  /** Whose clock a sample's time was read from. */
  public enum Clock {
    /** The printer's own clock, through the mapped time. */
    OWN,
    /** The agent's steady clock at arrival. */
    ARRIVAL
  }

  /** A sample timed by its arrival. */
  public static Sample arrived(HotEnd hotEnd, long arrivalNanos) {
    return new Sample(hotEnd, arrivalNanos, arrivalNanos, Clock.ARRIVAL, false);
  }

  /** A sample timed by the printer itself. */
  public static Sample timed(HotEnd hotEnd, long atNanos, long arrivalNanos) {
    return new Sample(hotEnd, atNanos, arrivalNanos, Clock.OWN, false);
  }

  /** The same sample as a broker's retained message. */
  public Sample asRetained() {
    return new Sample(hotEnd, atNanos, arrivalNanos, clock, true);
  }
}
