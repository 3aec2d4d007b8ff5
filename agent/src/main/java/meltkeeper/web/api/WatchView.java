package meltkeeper.web.api;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import meltkeeper.jam.Cause;
import meltkeeper.jam.Level;
import meltkeeper.jam.MinutesToStall;
import meltkeeper.jam.Outlook;

/**
 * How the jam watch sees a hot end, as the API and the page show it.
 *
 * @param level clear, narrowing, stalled or blind
 * @param evidence by detector, as a fraction of its limit
 * @param because the reason in plain words
 * @param minutesToStall how long it may take until nothing is fed
 * @param perhaps a cause that it looks like, and what to look at first
 */
public record WatchView(
    String level,
    Map<String, Double> evidence,
    String because,
    Optional<MinutesToStall> minutesToStall,
    Optional<String> perhaps) {

  static WatchView of(Outlook watch) {
    Map<String, Double> evidence = new TreeMap<>();
    watch.evidence().forEach((detector, value) -> evidence.put(detector.word(), value));
    return new WatchView(
        watch.level().word(),
        evidence,
        watch.because(),
        watch.minutesToStall(),
        watch.cause().map(Cause::suggestion));
  }

  /** True when somebody should go and look. */
  @JsonIgnore
  public boolean isTrouble() {
    return level.equals(Level.NARROWING.word()) || level.equals(Level.STALLED.word());
  }

  /** The whole of it, for a person. */
  public String words() {
    String minutes =
        minutesToStall
            .map(
                m ->
                    String.format(
                        Locale.ROOT, "; it may stall in %.0f to %.0f min", m.low(), m.high()))
            .orElse("");
    return "jam watch: "
        + level
        + ", "
        + because
        + minutes
        + perhaps.map(cause -> "; " + cause).orElse("");
  }
}
