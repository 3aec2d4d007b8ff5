package meltkeeper.protocol.mapping;

import java.util.List;
import java.util.Optional;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.Signal;

/**
 * How to read the messages of one topic pattern.
 *
 * @param topic which messages
 * @param form what their payload is
 * @param time where they tell their own time, for {@link PayloadForm#JSON} alone; without one, a
 *     message counts from its arrival
 * @param values what to read: one or more from JSON, exactly one at the empty pointer otherwise
 */
public record MessageRule(
    TopicPattern topic, PayloadForm form, Optional<TimeRule> time, List<ValueRule> values) {

  /**
   * A rule checked by {@link #fault}.
   *
   * @throws IllegalArgumentException with the text of the fault
   */
  public MessageRule {
    values = List.copyOf(values);
    fault(form, time, values)
        .ifPresent(
            fault -> {
              throw new IllegalArgumentException(fault.toString());
            });
  }

  /** What is wrong with the parts of a rule, its key being that of the part; empty when nothing. */
  public static Optional<Fault> fault(
      PayloadForm form, Optional<TimeRule> time, List<ValueRule> values) {
    if (values.isEmpty()) {
      return Optional.of(Fault.of("read", "nothing", "at least one signal"));
    }
    return form == PayloadForm.JSON ? Optional.empty() : plainFault(form, time, values);
  }

  private static Optional<Fault> plainFault(
      PayloadForm form, Optional<TimeRule> time, List<ValueRule> values) {
    if (time.isPresent()) {
      return Optional.of(
          Fault.of(
              "time",
              time.get().at(),
              "none, for a " + form.label() + " alone tells no time",
              "leave it out, and the message counts from its arrival"));
    }
    if (values.size() > 1) {
      return Optional.of(
          Fault.of(
              "read", values.size() + " signals", "one, for the payload is a " + form.label()));
    }
    ValueRule value = values.get(0);
    if (!value.at().tokens().isEmpty()) {
      return Optional.of(
          Fault.of(
              "read." + value.signal().label(),
              value.at(),
              "\"\", for the payload itself is the value"));
    }
    boolean number = value.signal().form() == Signal.Form.NUMBER;
    if (number != (form == PayloadForm.NUMBER)) {
      return Optional.of(
          Fault.of(
              "payload",
              form.label(),
              number ? "number or json" : "text or json",
              "for " + value.signal().label() + " is " + value.signal().allowed()));
    }
    return Optional.empty();
  }
}
