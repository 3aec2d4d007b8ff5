package meltkeeper.ledger;

import java.util.OptionalDouble;
import java.util.OptionalLong;
import meltkeeper.protocol.HotEnd;

/**
 * What the ledger knows of a hot end: the running totals, and what it must remember between two
 * readings. Stored with each commit, so that a restart between any two readings changes nothing.
 *
 * @param total everything ever credited
 */
public record Account(
    HotEnd hotEnd,
    Tally total,
    Thermal thermal,
    long targetNanos,
    Filament commanded,
    Filament measured,
    Activity activity) {

  /** An account of which nothing is known yet. */
  public static Account opened(HotEnd hotEnd) {
    return new Account(
        hotEnd,
        Tally.NONE,
        Thermal.UNKNOWN,
        Long.MIN_VALUE,
        Filament.UNKNOWN,
        Filament.UNKNOWN,
        Activity.UNKNOWN);
  }

  /** The account with more credited. */
  public Account credited(Tally more) {
    return new Account(
        hotEnd, total.plus(more), thermal, targetNanos, commanded, measured, activity);
  }

  /** The last temperature that counts, °C. */
  public OptionalDouble lastCelsius() {
    return thermal.isUnknown()
        ? OptionalDouble.empty()
        : OptionalDouble.of(thermal.lastPoint().celsius());
  }

  /** When the last reading that counts arrived, on the steady clock. */
  public OptionalLong lastArrivalNanos() {
    return thermal.isUnknown()
        ? OptionalLong.empty()
        : OptionalLong.of(thermal.lastPoint().arrivalNanos());
  }

  /** Up to when everything is credited; {@link Long#MIN_VALUE} before the first reading. */
  public long creditedUntilNanos() {
    return Math.max(
        activity.lastNanos(), thermal.isUnknown() ? Long.MIN_VALUE : thermal.lastPoint().atNanos());
  }

  Account with(Thermal next) {
    return new Account(hotEnd, total, next, targetNanos, commanded, measured, activity);
  }

  Account with(Activity next) {
    return new Account(hotEnd, total, thermal, targetNanos, commanded, measured, next);
  }

  Account withCommanded(Filament next) {
    return new Account(hotEnd, total, thermal, targetNanos, next, measured, activity);
  }

  Account withMeasured(Filament next) {
    return new Account(hotEnd, total, thermal, targetNanos, commanded, next, activity);
  }

  Account withTargetAt(long nanos) {
    return new Account(hotEnd, total, thermal, nanos, commanded, measured, activity);
  }

  /** The same account on a printer's clock that was set back. */
  Account onClockSetBackTo(long nanos) {
    return new Account(
        hotEnd,
        total,
        thermal,
        Math.min(targetNanos, nanos),
        commanded.onClockSetBackTo(nanos),
        measured.onClockSetBackTo(nanos),
        activity.onClockSetBackTo(nanos));
  }
}
