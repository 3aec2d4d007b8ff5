package meltkeeper.protocol.motion;

/** Takes the heat of hot ends, stretch by stretch, each hot end's in order of time. */
@FunctionalInterface
public interface Heat {

  /**
   * A stretch in which the temperature of a hot end runs linearly.
   *
   * @param hotEnd index, 0 to 15
   * @param fromCelsius at its beginning
   * @param untilCelsius at its end
   * @param seconds above 0
   */
  void during(int hotEnd, double fromCelsius, double untilCelsius, double seconds);
}
