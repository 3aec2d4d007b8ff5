package meltkeeper.pipeline;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import meltkeeper.jam.Outlook;
import meltkeeper.ledger.Tally;
import meltkeeper.protocol.Reading;

/**
 * The last day of one hot end, minute by minute, for a plot: kept in memory, begun anew with the
 * agent. At most {@value #MOST} minutes. Written by the writer's thread, read by any.
 */
final class Trail {

  static final int MOST = 1440;
  private static final long LENGTH_NANOS = 60_000_000_000L;

  private final Deque<Minute> minutes = new ArrayDeque<>();
  private long fromNanos = Long.MIN_VALUE;
  private double sumCelsius;
  private int samples;
  private OptionalDouble targetCelsius = OptionalDouble.empty();
  private Tally before = Tally.NONE;

  /**
   * Takes a reading.
   *
   * @param total what the hot end has been credited with, asked once a minute
   */
  void take(Reading reading, Supplier<Tally> total, Supplier<Outlook> outlook) {
    long from = Math.floorDiv(reading.sample().atNanos(), LENGTH_NANOS) * LENGTH_NANOS;
    if (from != fromNanos) {
      turn(from, total.get(), outlook.get());
    }
    if (reading instanceof Reading.HotEndTemperature temperature) {
      sumCelsius += temperature.celsius();
      samples++;
    } else if (reading instanceof Reading.HotEndTarget target) {
      targetCelsius = OptionalDouble.of(target.celsius());
    }
  }

  private void turn(long from, Tally total, Outlook outlook) {
    if (fromNanos != Long.MIN_VALUE) {
      keep(
          new Minute(
              fromNanos,
              samples == 0 ? OptionalDouble.empty() : OptionalDouble.of(sumCelsius / samples),
              targetCelsius,
              Math.max(0, total.commandedMicrometres() - before.commandedMicrometres()),
              Math.max(0, total.measuredMicrometres() - before.measuredMicrometres()),
              outlook.evidence().values().stream().mapToDouble(e -> e).max().orElse(0)));
    }
    fromNanos = from;
    before = total;
    sumCelsius = 0;
    samples = 0;
  }

  private synchronized void keep(Minute minute) {
    while (!minutes.isEmpty() && minutes.getLast().fromNanos() >= minute.fromNanos()) {
      minutes.removeLast();
    }
    minutes.addLast(minute);
    while (minutes.size() > MOST) {
      minutes.removeFirst();
    }
  }

  /** Its minutes, in order of time; the present one is not among them. */
  synchronized List<Minute> minutes() {
    return List.copyOf(minutes);
  }
}
