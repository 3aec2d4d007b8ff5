package meltkeeper.protocol.gcode;

import java.util.List;
import java.util.OptionalInt;
import java.util.OptionalLong;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Signal;

/**
 * What one line from a printer says, in the RepRap dialect (common practice, no source).
 *
 * <p>Immutable. Whoever talks with the printer asks the questions below; whoever reads its values
 * {@link #accept visits}.
 */
public sealed interface Report {

  /**
   * Reads one line, without its end. One longer than {@link LineSplitter#LIMIT} is not read. Never
   * throws for any bytes.
   */
  static Report of(Payload line) {
    if (line.length() > LineSplitter.LIMIT) {
      return new Unreadable(
          new Rejected(
              Rejected.Reason.TOO_LONG,
              "a line longer than "
                  + LineSplitter.LIMIT
                  + " bytes; it begins "
                  + line.text().substring(0, 60)));
    }
    return ReportScanner.scan(line.array());
  }

  /** True when the printer has done, or taken over, the line that it was sent: {@code ok}. */
  default boolean acknowledges() {
    return false;
  }

  /** True when the printer asks for more time before it acknowledges: {@code busy:}. */
  default boolean isBusy() {
    return false;
  }

  /** True when the printer's controller started anew and forgot what it was asked. */
  default boolean isRestart() {
    return false;
  }

  /** True when the line tells a hot end's temperature. */
  default boolean tellsTemperature() {
    return false;
  }

  /** True when the printer does not know this request. */
  default boolean rejects(Request request) {
    return false;
  }

  /** The line number from which the printer wants to be sent again, if it does. */
  default OptionalLong resendFrom() {
    return OptionalLong.empty();
  }

  /** Calls the visitor's method for this case. */
  <R> R accept(Visitor<R> visitor);

  /**
   * Values, alone or behind {@code ok}; none for a bare {@code ok}.
   *
   * @param activeHotEnd the hot end at work, where the line shows it
   * @param values told once each, not yet checked against their range
   * @param rejected what else stood in the line and could not be read
   */
  record Values(
      boolean acknowledges, OptionalInt activeHotEnd, List<Value> values, List<Rejected> rejected)
      implements Report {

    public Values {
      values = List.copyOf(values);
      rejected = List.copyOf(rejected);
    }

    @Override
    public boolean tellsTemperature() {
      return values.stream().anyMatch(value -> value.signal() == Signal.HOT_END_TEMPERATURE);
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visit(this);
    }
  }

  /**
   * One value.
   *
   * @param hotEnd counted from 0; empty for the hot end at work
   * @param number as printed: degrees Celsius, millimetres, or duty on the printer's own scale
   */
  record Value(Signal signal, OptionalInt hotEnd, double number) {}

  /** The printer is at work on a line and will acknowledge it later. */
  record Busy() implements Report {
    @Override
    public boolean isBusy() {
      return true;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visit(this);
    }
  }

  /** Something is wrong with the printer, in its own words. */
  record Failure(String text) implements Report {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visit(this);
    }
  }

  /**
   * A line arrived damaged; the printer wants all lines from this one on again.
   *
   * @param lineNumber not negative
   */
  record Resend(long lineNumber) implements Report {
    @Override
    public OptionalLong resendFrom() {
      return OptionalLong.of(lineNumber);
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visit(this);
    }
  }

  /** The printer asks its host to act, or tells it what it did: {@code // action:pause}. */
  record Action(String words) implements Report {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visit(this);
    }
  }

  /**
   * A job is printing from the printer's own storage.
   *
   * @param doneBytes 0 to {@code totalBytes}
   * @param totalBytes the file's length, at least 1
   */
  record StorageJob(long doneBytes, long totalBytes) implements Report {

    public StorageJob {
      if (!isPossible(doneBytes, totalBytes)) {
        throw new IllegalArgumentException(
            "byte " + doneBytes + " of " + totalBytes + " is not a place in a file");
      }
    }

    static boolean isPossible(long doneBytes, long totalBytes) {
      return doneBytes >= 0 && totalBytes > 0 && doneBytes <= totalBytes;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visit(this);
    }
  }

  /** No job is printing from the printer's own storage. */
  record NoStorageJob() implements Report {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visit(this);
    }
  }

  /** The printer's controller started anew. */
  record Restart() implements Report {
    @Override
    public boolean isRestart() {
      return true;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visit(this);
    }
  }

  /**
   * The printer does not know a command.
   *
   * @param command as the printer repeats it, in upper case; empty when it does not
   */
  record UnknownCommand(String command) implements Report {
    @Override
    public boolean rejects(Request request) {
      return command.equals(request.code()) || command.startsWith(request.code() + " ");
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visit(this);
    }
  }

  /** Well-formed words that say nothing to us, or an empty line. */
  record Chatter() implements Report {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visit(this);
    }
  }

  /** A line that could not be read. */
  record Unreadable(Rejected rejected) implements Report {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visit(this);
    }
  }

  /** One method a case. */
  interface Visitor<R> {
    R visit(Values report);

    R visit(Busy report);

    R visit(Failure report);

    R visit(Resend report);

    R visit(Action report);

    R visit(StorageJob report);

    R visit(NoStorageJob report);

    R visit(Restart report);

    R visit(UnknownCommand report);

    R visit(Chatter report);

    R visit(Unreadable report);
  }
}
