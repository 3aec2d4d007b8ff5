package meltkeeper.protocol;

/**
 * When something arrived, on both clocks.
 *
 * @param steadyNanos the wall clock when listening began plus the monotonic time since: never steps
 * @param wallNanos the wall clock, which may step
 */
public record Arrival(long steadyNanos, long wallNanos) {

  /** An arrival known from one clock alone, as in a recording. */
  public static Arrival at(long nanos) {
    return new Arrival(nanos, nanos);
  }
}
