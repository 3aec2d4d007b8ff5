package meltkeeper.protocol.mapping;

import java.util.Map;
import java.util.Optional;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.Signal;

/**
 * Where one signal stands in a payload and what it means there.
 *
 * @param signal what is read
 * @param at the place in the payload
 * @param scale a number counts as value · scale + offset; finite and not 0
 * @param offset in the signal's unit; finite
 * @param words what the printer's words mean, for {@code job-state} alone; empty when it says
 *     printing, paused and idle itself
 * @param hotEnd index of the hot end, 0 to 15
 */
public record ValueRule(
    Signal signal,
    JsonPath at,
    double scale,
    double offset,
    Map<String, JobState> words,
    int hotEnd) {

  /**
   * A rule checked by {@link #fault}.
   *
   * @throws IllegalArgumentException with the text of the fault
   */
  public ValueRule {
    words = Map.copyOf(words);
    fault(signal, scale, offset, words, hotEnd)
        .ifPresent(
            fault -> {
              throw new IllegalArgumentException(fault.toString());
            });
  }

  /** A rule for the first hot end that takes the value as it stands. */
  public static ValueRule plain(Signal signal, JsonPath at) {
    return new ValueRule(signal, at, 1, 0, Map.of(), 0);
  }

  /** What is wrong with the parts of a rule, its key being that of the part; empty when nothing. */
  public static Optional<Fault> fault(
      Signal signal, double scale, double offset, Map<String, JobState> words, int hotEnd) {
    boolean number = signal.form() == Signal.Form.NUMBER;
    if (!Double.isFinite(scale) || scale == 0) {
      return Optional.of(Fault.of("scale", scale, "a finite number other than 0"));
    }
    if (!Double.isFinite(offset)) {
      return Optional.of(Fault.of("offset", offset, "a finite number"));
    }
    if (!number && scale != 1) {
      return Optional.of(Fault.of("scale", scale, "none, for " + signal.label() + " is no number"));
    }
    if (!number && offset != 0) {
      return Optional.of(
          Fault.of("offset", offset, "none, for " + signal.label() + " is no number"));
    }
    if (signal.form() != Signal.Form.WORD && !words.isEmpty()) {
      return Optional.of(
          Fault.of("words", words.keySet(), "none, for " + signal.label() + " has no words"));
    }
    if (hotEnd < 0 || hotEnd > HotEnd.MAX_INDEX) {
      return Optional.of(
          Fault.of("hot-end", hotEnd, "0 to " + HotEnd.MAX_INDEX + ", the first being 0"));
    }
    return Optional.empty();
  }
}
