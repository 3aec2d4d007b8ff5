package meltkeeper.caution;

import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Consumer;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.Reading;

/**
 * What is remembered of one hot end between two readings. While something calls for care, every
 * reading that shows it says so again, and every one that shows the contrary says that it is over:
 * whoever listens need not have heard the beginning.
 *
 * @param celsius the latest temperature
 * @param aboveSinceNanos since when every temperature was above the limit
 * @param idleSinceNanos since when it has been hot with nothing to do
 * @param atNanos of the latest temperature
 * @param isPrinting as the printer last said
 * @param fedMillimetres the latest total of filament asked for
 * @param heardNanos arrival of the latest reading on the steady clock
 */
public record Lookout(
    HotEnd hotEnd,
    OptionalDouble celsius,
    OptionalLong aboveSinceNanos,
    OptionalLong idleSinceNanos,
    long atNanos,
    boolean isPrinting,
    OptionalDouble fedMillimetres,
    OptionalLong heardNanos) {

  /** One wrong value calls nobody: a limit counts as passed after so long above it. */
  static final long SETTLE_NANOS = 5_000_000_000L;

  /** After a longer silence, nobody knows that it was idle all the time. */
  static final long IDLE_GAP_NANOS = 600_000_000_000L;

  /** Of a hot end that was never heard. */
  public static Lookout on(HotEnd hotEnd) {
    return new Lookout(
        hotEnd,
        OptionalDouble.empty(),
        OptionalLong.empty(),
        OptionalLong.empty(),
        Long.MIN_VALUE,
        false,
        OptionalDouble.empty(),
        OptionalLong.empty());
  }

  /**
   * Takes a reading that is not late. A retained one tells what the printer does, and nothing of
   * heat or time.
   *
   * @param found hears what calls for care, and what does so no more
   */
  public Lookout step(Guard guard, Reading reading, Consumer<Caution> found) {
    Step step = new Step(this, guard, found, reading.sample());
    if (reading instanceof Reading.JobStatus job) {
      return step.job(job.state() == JobState.PRINTING);
    }
    if (reading.sample().retained()) {
      return this;
    }
    if (reading instanceof Reading.HotEndTemperature temperature) {
      return step.temperature(temperature.celsius());
    }
    if (reading instanceof Reading.FilamentCommanded fed) {
      return step.fed(fed.millimetres());
    }
    return step.heard();
  }

  /**
   * Looks at the clock.
   *
   * @param printerHeardNanos when any hot end of the same printer was last heard, on the steady
   *     clock
   * @param nowNanos on the same clock
   */
  public void look(Guard guard, long printerHeardNanos, long nowNanos, Consumer<Caution> found) {
    long silentNanos = nowNanos - printerHeardNanos;
    boolean matters = isPrinting || celsius.orElse(0) > guard.hotAboveCelsius();
    if (heardNanos.isPresent() && matters && silentNanos >= guard.silentNanos()) {
      found.accept(new Caution.Silent(hotEnd, nowNanos, celsius.orElse(0), silentNanos));
    }
  }
}
