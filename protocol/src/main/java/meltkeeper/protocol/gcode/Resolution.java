package meltkeeper.protocol.gcode;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Rejected.Reason;
import meltkeeper.protocol.Signal;
import meltkeeper.protocol.gcode.Field.Figure;
import meltkeeper.protocol.gcode.Report.Value;

/**
 * Finds out whose values a report's fields are.
 *
 * <p>{@code T:} and {@code @:} are the hot end's at work. Beside {@code T0:} and {@code T1:} they
 * are told twice, and the numbered ones count; the one that {@code T:} repeats is at work. {@code
 * E:} is a place of the filament beside {@code X:}, and a hot end's number beside {@code T:} alone.
 */
final class Resolution {

  private final List<Field> fields;
  private final List<Rejected> rejected;
  private final List<Value> values = new ArrayList<>(4);

  Resolution(List<Field> fields, List<Rejected> rejected) {
    this.fields = fields;
    this.rejected = rejected;
  }

  Report.Values values(boolean acknowledges) {
    boolean isPosition = fields.stream().anyMatch(field -> field.isNamed("X"));
    OptionalInt waiting = isPosition ? OptionalInt.empty() : waitingHotEnd();
    boolean temperaturesAreNumbered = isNumbered("T");
    boolean dutiesAreNumbered = isNumbered("@");
    for (Field field : fields) {
      if (field.isNamed("T") && (field.hasIndex() || !temperaturesAreNumbered)) {
        OptionalInt hotEnd = field.hasIndex() ? OptionalInt.of(field.index()) : waiting;
        add(Signal.HOT_END_TARGET, field, hotEnd, field.target());
        add(Signal.HOT_END_TEMPERATURE, field, hotEnd, field.actual());
      } else if (field.isNamed("@") && (field.hasIndex() || !dutiesAreNumbered)) {
        OptionalInt hotEnd = field.hasIndex() ? OptionalInt.of(field.index()) : waiting;
        add(Signal.HEATER_DUTY, field, hotEnd, field.actual());
      } else if (field.isNamed("E") && !field.hasIndex() && isPosition) {
        add(Signal.FILAMENT_COMMANDED, field, OptionalInt.empty(), field.actual());
      }
    }
    return new Report.Values(acknowledges, hotEndAtWork(), values, rejected);
  }

  private void add(Signal signal, Field field, OptionalInt hotEnd, Figure figure) {
    if (!figure.isPresent()) {
      return;
    }
    if (!figure.isNumber()) {
      rejected.add(field.notANumber());
    } else if (hotEnd.orElse(0) > HotEnd.MAX_INDEX) {
      rejected.add(
          new Rejected(
              Reason.OUT_OF_RANGE,
              "hot end " + hotEnd.orElse(0) + "; allowed: 0 to " + HotEnd.MAX_INDEX));
    } else {
      values.add(new Value(signal, hotEnd, figure.value()));
    }
  }

  private boolean isNumbered(String key) {
    return fields.stream().anyMatch(field -> field.isNamed(key) && field.hasIndex());
  }

  private OptionalInt waitingHotEnd() {
    for (Field field : fields) {
      if (field.isNamed("E") && !field.hasIndex() && field.actual().value() >= 0) {
        return OptionalInt.of((int) Math.min(field.actual().value(), HotEnd.MAX_INDEX + 1.0));
      }
    }
    return OptionalInt.empty();
  }

  /** The one numbered hot end that {@code T:} repeats; empty when none, or several, match. */
  private OptionalInt hotEndAtWork() {
    OptionalInt found = OptionalInt.empty();
    for (Field repeated : fields) {
      if (!repeated.isNamed("T") || repeated.hasIndex()) {
        continue;
      }
      for (Field field : fields) {
        if (field.isNamed("T") && field.hasIndex() && field.index() <= HotEnd.MAX_INDEX) {
          boolean matches =
              field.actual().equals(repeated.actual()) && field.target().equals(repeated.target());
          if (matches && found.isPresent()) {
            return OptionalInt.empty();
          }
          if (matches) {
            found = OptionalInt.of(field.index());
          }
        }
      }
    }
    return found;
  }
}
