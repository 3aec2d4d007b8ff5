package meltkeeper.jam.score;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;
import meltkeeper.protocol.Reading;

/**
 * What a recording tells of one hot end's feeding: when it was heard, the stretches of five minutes
 * in which filament was asked for, and the minutes in which none came though it was (our own rule:
 * at least 10 mm asked for and under a tenth of it seen). Seconds since 1970. Mutable.
 */
public final class FeedRecord {

  private static final double NANOS = 1e9;
  private static final double SLOT_SECONDS = 300;
  private static final double MINUTE_SECONDS = 60;
  private static final double LEAST_ASKED_MM = 10;
  private static final double STALL_SHARE = 0.1;

  /** No retraction is longer; a running total that falls further began anew. */
  private static final double LONGEST_RETRACTION_MM = 50;

  private final List<Double> slots = new ArrayList<>();
  private final List<Double> stalls = new ArrayList<>();
  private double first = Double.NaN;
  private double last = Double.NaN;
  private double commanded = Double.NaN;
  private double mostCommanded = Double.NaN;
  private double minuteBegan = Double.NaN;
  private double minuteCommanded;
  private double minuteMeasured;

  /** Takes a reading of this hot end; one that is older than the last is passed over. */
  public void take(Reading reading) {
    double at = reading.sample().atNanos() / NANOS;
    if (reading.sample().retained() || at < last) {
      return;
    }
    first = Double.isNaN(first) ? at : first;
    last = at;
    if (reading instanceof Reading.FilamentCommanded now) {
      asked(at, now.millimetres());
    } else if (reading instanceof Reading.FilamentMeasured now && !Double.isNaN(commanded)) {
      seen(at, now.millimetres());
    }
  }

  private void asked(double at, double millimetres) {
    commanded = millimetres;
    boolean anew = !(millimetres > mostCommanded - LONGEST_RETRACTION_MM);
    boolean fed = millimetres > mostCommanded;
    if (anew || fed) {
      mostCommanded = millimetres;
    }
    double slot = Math.floor(at / SLOT_SECONDS) * SLOT_SECONDS;
    if (fed && (slots.isEmpty() || slots.get(slots.size() - 1) != slot)) {
      slots.add(slot);
    }
  }

  private void seen(double at, double measured) {
    double seconds = at - minuteBegan;
    if (seconds < MINUTE_SECONDS) {
      return;
    }
    double moreAsked = commanded - minuteCommanded;
    double moreSeen = Math.abs(measured - minuteMeasured);
    if (seconds < 2 * MINUTE_SECONDS
        && moreAsked >= LEAST_ASKED_MM
        && moreSeen < STALL_SHARE * moreAsked) {
      stalls.add(at);
    }
    minuteBegan = at;
    minuteCommanded = commanded;
    minuteMeasured = measured;
  }

  /** True when that time lies between the first and the last reading. */
  public boolean covers(double seconds) {
    return first <= seconds && seconds <= last;
  }

  /** When it was first heard. */
  public double firstSeconds() {
    return first;
  }

  /** When it was last heard. */
  public double lastSeconds() {
    return last;
  }

  /** Hours of the stretches in which filament was asked for and that count. */
  public double printingHours(DoublePredicate counts) {
    return slots.stream().filter(counts::test).count() * SLOT_SECONDS / 3600;
  }

  /** The end of the first minute without flow that ends after one time and up to another. */
  OptionalDouble stalled(double after, double until) {
    return stalls.stream()
        .mapToDouble(stall -> stall)
        .filter(stall -> stall > after && stall <= until)
        .findFirst();
  }
}
