package meltkeeper.ledger;

import meltkeeper.ledger.Thermal.Point;
import meltkeeper.protocol.NoticeKind;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Sample;

/**
 * Credits one hot end's readings, one after another.
 *
 * <p>Temperature runs linearly between two readings, and each band gets its share of the hot part
 * to the nanosecond. An interval longer than the gap limit is bridged along the same line when both
 * ends are hot, it is shorter than {@link Limits#BRIDGE_LIMIT_NANOS} and nothing says that the hot
 * end was cold in between; otherwise, with a hot end or filament fed meanwhile, it is unobserved.
 *
 * <p>A reading that is not later than the last one of its signal credits nothing. A printer's own
 * clock that was set back is recognised by several readings in order; they are then credited, and
 * the step itself is as long as the arrivals say.
 *
 * <p>Immutable and without a clock: all time comes with the readings.
 */
public final class Ledger {

  private final Limits limits;

  public Ledger(Limits limits) {
    this.limits = limits;
  }

  /** An account after a reading, and what became of the reading. */
  public record Step(Account account, Verdict verdict) {}

  /**
   * The account after a reading of the same hot end. What the reading earns goes into {@code
   * credits}, not yet into the account's total.
   */
  public Step step(Account account, Reading reading, Credits credits) {
    return reading.accept(new Crediting(account, credits));
  }

  private final class Crediting implements Reading.Visitor<Step> {

    private final Account account;
    private final Credits credits;

    Crediting(Account account, Credits credits) {
      this.account = account;
      this.credits = credits;
    }

    @Override
    public Step visit(Reading.HotEndTemperature reading) {
      Point point = Point.of(reading);
      Thermal thermal = account.thermal();
      if (reading.sample().retained()) {
        return retained(limits.isHot(point.celsius()) ? account : account.with(thermal.wasCold()));
      }
      if (thermal.isUnknown()) {
        return taken(advanced(reading.sample()).with(thermal.at(point)));
      }
      Point last = thermal.lastPoint();
      if (point.atNanos() > last.atNanos()) {
        return taken(credited(advanced(reading.sample()), point));
      }
      if (point.atNanos() == last.atNanos()) {
        return sameTime(reading, point);
      }
      Thermal suspecting = thermal.suspecting(point, reading.sample().clock());
      return new Step(
          suspecting.clockWasSetBack() ? setBack(suspecting) : account.with(suspecting),
          Verdict.LATE);
    }

    /** Arrival times may coincide where the printer's own may not. */
    private Step sameTime(Reading.HotEndTemperature reading, Point point) {
      boolean told =
          reading.sample().clock() == Sample.Clock.OWN
              || point.celsius() == account.thermal().lastPoint().celsius();
      return told
          ? new Step(account, Verdict.DUPLICATE)
          : taken(account.with(account.thermal().at(point)));
    }

    /** Takes the suspects' clock for the printer's. */
    private Account setBack(Thermal suspecting) {
      Point first = suspecting.suspects().get(0);
      Point last = suspecting.lastPoint();
      long elapsed = first.arrivalNanos() - last.arrivalNanos();
      Point shifted = new Point(first.atNanos() - elapsed, last.arrivalNanos(), last.celsius());
      Account onNewClock = account.with(suspecting.at(shifted)).onClockSetBackTo(shifted.atNanos());
      for (Point suspect : suspecting.suspects()) {
        onNewClock =
            credited(
                onNewClock.with(
                    onNewClock
                        .activity()
                        .advance(suspect.atNanos(), gapNanos(onNewClock), credits)),
                suspect);
      }
      return onNewClock;
    }

    private Account credited(Account before, Point point) {
      Thermal thermal = before.thermal();
      Point last = thermal.lastPoint();
      long interval = point.atNanos() - last.atNanos();
      TemperatureLine line =
          new TemperatureLine(last.atNanos(), last.celsius(), point.atNanos(), point.celsius());
      if (interval <= thermal.gapNanos(limits, interval)) {
        TemperatureLine.Hot hot = line.above(limits.hotAboveCelsius());
        line.credit(hot, credits);
        before.activity().creditIdle(hot, credits);
        return before.with(thermal.at(point));
      }
      return before.with(acrossGap(thermal, line, point, interval));
    }

    private Thermal acrossGap(Thermal thermal, TemperatureLine line, Point point, long interval) {
      boolean hotBefore = limits.isHot(line.fromCelsius());
      boolean hotAfter = limits.isHot(line.untilCelsius());
      boolean coldBetween = thermal.coldSaidNanos() < point.atNanos();
      if (hotBefore && hotAfter && interval < Limits.BRIDGE_LIMIT_NANOS && !coldBetween) {
        line.credit(new TemperatureLine.Hot(line.fromNanos(), line.untilNanos()), credits);
        credits.spread(Credits.Measure.BRIDGED, line.fromNanos(), line.untilNanos());
        return thermal.at(point);
      }
      if (hotBefore || hotAfter || thermal.fed()) {
        credits.add(Credits.Measure.UNOBSERVED, point.atNanos(), interval);
        return thermal.at(point);
      }
      return thermal.at(point).undecided(interval);
    }

    @Override
    public Step visit(Reading.HotEndTarget reading) {
      boolean cold = !limits.isHot(reading.celsius());
      Sample sample = reading.sample();
      if (sample.retained()) {
        return retained(cold ? account.with(account.thermal().wasCold()) : account);
      }
      if (sample.atNanos() < account.targetNanos()) {
        return new Step(account, Verdict.LATE);
      }
      Account advanced = advanced(sample);
      return taken(
          advanced
              .withTargetAt(sample.atNanos())
              .with(advanced.thermal().target(cold, sample.atNanos())));
    }

    @Override
    public Step visit(Reading.FilamentCommanded reading) {
      return filament(
          reading.sample(),
          account.commanded(),
          Filament.micrometres(reading.millimetres()),
          Credits.Measure.COMMANDED);
    }

    @Override
    public Step visit(Reading.FilamentMeasured reading) {
      return filament(
          reading.sample(),
          account.measured(),
          Filament.micrometres(reading.millimetres()),
          Credits.Measure.MEASURED);
    }

    private Step filament(Sample sample, Filament filament, long total, Credits.Measure measure) {
      if (sample.retained()) {
        return retained(account);
      }
      Verdict verdict = filament.verdict(sample, total);
      if (verdict != Verdict.TAKEN) {
        return new Step(account, verdict);
      }
      long rise = filament.riseTo(total);
      credits.add(measure, sample.atNanos(), rise);
      Account advanced = advanced(sample);
      Thermal thermal = advanced.thermal();
      if (filament.restartsAt(total)) {
        thermal = thermal.wasCold();
      }
      if (rise > 0) {
        credits.add(Credits.Measure.UNOBSERVED, sample.atNanos(), thermal.undecidedGapNanos());
        thermal = thermal.fedNow();
      } else if (measure == Credits.Measure.COMMANDED) {
        thermal = thermal.undecided(0);
      }
      Filament next = filament.at(sample.atNanos(), total);
      Account moved =
          measure == Credits.Measure.COMMANDED
              ? advanced.withCommanded(next)
              : advanced.withMeasured(next);
      return taken(moved.with(thermal).with(feeding(moved.activity(), measure, rise > 0, sample)));
    }

    /** The encoder tells of feeding only where the printer does not say what it asks for. */
    private Activity feeding(
        Activity activity, Credits.Measure measure, boolean rose, Sample sample) {
      return measure == Credits.Measure.COMMANDED || !account.commanded().known()
          ? activity.fed(rose, sample.atNanos())
          : activity;
    }

    @Override
    public Step visit(Reading.JobStatus reading) {
      Sample sample = reading.sample();
      if (sample.retained()) {
        return retained(account.with(account.activity().told(reading.state(), Long.MIN_VALUE)));
      }
      if (sample.atNanos() < account.activity().stateNanos()) {
        return new Step(account, Verdict.LATE);
      }
      Account advanced = advanced(sample);
      return taken(advanced.with(advanced.activity().told(reading.state(), sample.atNanos())));
    }

    @Override
    public Step visit(Reading.Notice reading) {
      Account advanced = reading.sample().retained() ? account : advanced(reading.sample());
      return taken(
          reading.kind() == NoticeKind.RESTARTED
              ? advanced.with(advanced.thermal().wasCold())
              : advanced);
    }

    @Override
    public Step visit(Reading.HeaterDuty reading) {
      return noted(reading);
    }

    @Override
    public Step visit(Reading.FeedLoad reading) {
      return noted(reading);
    }

    @Override
    public Step visit(Reading.Fan reading) {
      return noted(reading);
    }

    @Override
    public Step visit(Reading.Job reading) {
      return noted(reading);
    }

    @Override
    public Step visit(Reading.Material reading) {
      return noted(reading);
    }

    @Override
    public Step visit(Reading.Progress reading) {
      return noted(reading);
    }

    /** Credits nothing of its own, but shows that the printer is being heard. */
    private Step noted(Reading reading) {
      return reading.sample().retained() ? retained(account) : taken(advanced(reading.sample()));
    }

    private Account advanced(Sample sample) {
      Activity activity = account.activity();
      return sample.atNanos() > activity.lastNanos()
          ? account.with(activity.advance(sample.atNanos(), gapNanos(account), credits))
          : account;
    }

    private long gapNanos(Account of) {
      return limits.gapNanos(of.thermal().usualPeriodNanos());
    }

    private static Step taken(Account after) {
      return new Step(after, Verdict.TAKEN);
    }

    private static Step retained(Account after) {
      return new Step(after, Verdict.RETAINED);
    }
  }
}
