package meltkeeper.protocol.mapping;

import java.util.Optional;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.NoticeKind;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Outlet;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Rejected.Reason;
import meltkeeper.protocol.Sample;
import meltkeeper.protocol.Signal;

/** One value rule at work: tells what its cell holds, or why that cannot be. */
final class ValueTeller {

  private final ValueRule rule;
  private final Cell cell;
  private final Words words;

  ValueTeller(ValueRule rule, Cell cell) {
    this.rule = rule;
    this.cell = cell;
    this.words = new Words(rule.words());
  }

  int hotEnd() {
    return rule.hotEnd();
  }

  /** True when the message does not speak of the signal. */
  boolean isSilent() {
    return cell.isEmpty();
  }

  void tell(Sample sample, Origin origin, Outlet outlet) {
    if (rule.signal().form() == Signal.Form.NUMBER) {
      tellNumber(sample, origin, outlet);
    } else if (!cell.isScalar()) {
      refuse(Reason.NOT_A_NUMBER, rule.signal().allowed(), "", origin, outlet);
    } else if (cell.isTooLong()) {
      refuse(
          Reason.TOO_LONG,
          "a text of at most " + Cell.MAX_TEXT + " characters",
          "",
          origin,
          outlet);
    } else {
      tellText(sample, origin, outlet);
    }
  }

  private void tellNumber(Sample sample, Origin origin, Outlet outlet) {
    double value = cell.number() * rule.scale() + rule.offset();
    if (rule.signal().admits(value)) {
      outlet.reading(rule.signal().reading(sample, value));
    } else if (Double.isNaN(value)) {
      refuse(Reason.NOT_A_NUMBER, "a number", "", origin, outlet);
    } else {
      boolean plain = rule.scale() == 1 && rule.offset() == 0;
      String scaled = plain ? "" : "scale and offset make it " + value;
      refuse(Reason.OUT_OF_RANGE, rule.signal().allowed(), scaled, origin, outlet);
    }
  }

  private void tellText(Sample sample, Origin origin, Outlet outlet) {
    String text = cell.text();
    switch (rule.signal()) {
      case JOB_STATE -> tellState(sample, text, origin, outlet);
      case JOB -> outlet.reading(new Reading.Job(sample, text));
      case MATERIAL -> outlet.reading(new Reading.Material(sample, text));
      default -> {
        if (!text.isBlank()) {
          outlet.reading(new Reading.Notice(sample, NoticeKind.OTHER, text));
        }
      }
    }
  }

  private void tellState(Sample sample, String word, Origin origin, Outlet outlet) {
    Optional<JobState> state = words.state(word);
    if (state.isPresent()) {
      outlet.reading(new Reading.JobStatus(sample, state.get()));
    } else {
      refuse(Reason.NOT_A_NUMBER, words.allowed(), "", origin, outlet);
    }
  }

  private void refuse(Reason reason, String allowed, String mend, Origin origin, Outlet outlet) {
    Fault fault = Fault.of(rule.signal().label(), cell.text(), allowed, mend);
    outlet.rejected(new Rejected(reason, fault.at(origin.describe()).toString()));
  }
}
