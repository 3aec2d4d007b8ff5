package meltkeeper.jam.score;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What a jam watch with one limit made of recordings with known jams.
 *
 * @param wantedHours printing hours wanted between two false alarms: the limit
 * @param calls one for each known jam
 * @param falseAlarms outside of all jams; those within half an hour on one hot end are one
 * @param printingHours outside of all jams
 */
public record LimitScore(
    double wantedHours, List<Call> calls, int falseAlarms, double printingHours) {

  private static final double HALF_A_MINUTE_SECONDS = 30;
  private static final double FIVE_MINUTES_SECONDS = 300;

  public LimitScore {
    calls = List.copyOf(calls);
  }

  /** Known jams. */
  public int jams() {
    return calls.size();
  }

  /** Jams with an alarm before the stall. */
  public int warned() {
    return (int) calls.stream().filter(Call::isWarned).count();
  }

  /** Jams called before, or at most 30 s after the flow stopped. */
  public int calledAtOnce() {
    return calledWithin(HALF_A_MINUTE_SECONDS);
  }

  /** Jams called before, or at most 5 min after the flow stopped. */
  public int calledSoon() {
    return calledWithin(FIVE_MINUTES_SECONDS);
  }

  private int calledWithin(double seconds) {
    return (int)
        calls.stream()
            .filter(call -> call.secondsAfterStop().orElse(Double.POSITIVE_INFINITY) <= seconds)
            .count();
  }

  /** The lead below which that share of the jams have theirs, minutes; empty without jams. */
  public OptionalDouble leadMinutes(double share) {
    return calls.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(
            Quantile.of(calls.stream().map(Call::leadMinutes).sorted().toList(), share));
  }

  /** False alarms in 1000 printing hours; none without printing. */
  public double falseAlarmsPer1000Hours() {
    return per1000Hours(falseAlarms);
  }

  /** Exact two-sided 95 % bounds of that rate; zeros without printing. */
  public Bounds boundsPer1000Hours() {
    Bounds count = Bounds.ofCount(falseAlarms);
    return new Bounds(per1000Hours(count.low()), per1000Hours(count.high()));
  }

  /** True when so many false alarms speak against the interval wanted. */
  boolean isNoisierThanWanted() {
    return Bounds.ofCount(falseAlarms).low() * wantedHours > printingHours;
  }

  /** True when so few false alarms in so many hours show that the interval holds. */
  boolean isShown() {
    return Bounds.upperOfCount(falseAlarms) * wantedHours <= printingHours;
  }

  private double per1000Hours(double count) {
    return printingHours > 0 ? 1000 * count / printingHours : 0;
  }
}
