package meltkeeper.jam;

import java.util.Map;
import java.util.Optional;

/**
 * How the watch sees a hot end now. Immutable.
 *
 * @param evidence of each detector that has a say, as a fraction of its limit: 1 warns
 * @param because the reason in plain words
 */
public record Outlook(
    Level level,
    Map<Detector, Double> evidence,
    String because,
    Optional<MinutesToStall> minutesToStall,
    Optional<Cause> cause) {

  /** Of a hot end of which nothing was heard. */
  public static final Outlook NOTHING_HEARD =
      new Outlook(Level.CLEAR, Map.of(), "nothing heard yet", Optional.empty(), Optional.empty());

  public Outlook {
    evidence = Map.copyOf(evidence);
  }
}
