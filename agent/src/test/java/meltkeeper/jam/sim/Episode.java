package meltkeeper.jam.sim;

import java.util.function.Consumer;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Sample;

/**
 * A printer with its jobs for some hours, well or with one fault: hands over readings, and tells
 * the truth afterwards. The same seed gives the same episode.
 */
public final class Episode implements Course {

  /** The printer's hot end. */
  public static final HotEnd WREN = HotEnd.first("wren");

  private static final double DT = 0.1;
  private static final double AFTER_STALL = 600;
  private static final double LONGEST_FAULT = 8 * 3600;

  private final Draw draw;
  private final Fault fault;
  private double onset;
  private double ends;
  private final Heat heat;
  private final Wheel wheel;
  private final Bore bore;
  private final boolean tellsState;
  private final boolean tellsFan;
  private final boolean tellsLoad;
  private final double dutyCounts;
  private final double period;
  private final double missing;
  private final boolean fanIsBusy;
  private final boolean breakFanFails;
  private final double pathMm;
  private final double targetCelsius;

  private final IdealCusum ideal = new IdealCusum();
  private final StallClock stall = new StallClock();

  private Toolpath path;
  private double now;
  private double commanded;
  private double passed;
  private double farthest;
  private double molten;
  private double target;
  private double fan;
  private double fanLeft;
  private JobState state = JobState.IDLE;
  private int job;
  private double jobLeft;
  private double restLeft = 30;
  private double pauseLeft;
  private double purgeLeft;
  private double sinceRunout;
  private double printing;
  private boolean faulty;
  private double melted;
  private double well;

  /** An episode that lasts so many hours, or until after the stall that its fault leads to. */
  public Episode(long seed, Fault fault, double healthyHours) {
    draw = Draw.of(seed);
    this.fault = fault;
    onset = fault == Fault.NONE ? Double.POSITIVE_INFINITY : healthyHours * 3600;
    ends = fault == Fault.NONE ? healthyHours * 3600 : onset + LONGEST_FAULT;
    heat = new Heat(draw);
    wheel = new Wheel(draw);
    bore = new Bore(draw, fault);
    path = new Toolpath(draw);
    tellsState = draw.chance(0.8);
    tellsFan = draw.chance(0.5);
    tellsLoad = draw.chance(0.2);
    dutyCounts = draw.oneOf(100, 127, 255);
    period = draw.oneOf(1, 1, 2, 2, 3, 5);
    missing = draw.between(0, 0.03);
    fanIsBusy = draw.chance(0.5);
    breakFanFails = draw.chance(0.5);
    pathMm = draw.oneOf(50, 500, 800);
    targetCelsius = draw.between(200, 255);
  }

  @Override
  public HotEnd hotEnd() {
    return WREN;
  }

  @Override
  public boolean encoderIsBlind() {
    return wheel.blind;
  }

  @Override
  public double encoderScale() {
    return wheel.scale();
  }

  public boolean tellsLoad() {
    return tellsLoad;
  }

  @Override
  public Truth run(Consumer<Reading> readings) {
    double nextSample = 0;
    while (now < ends && now < stall.seconds() + AFTER_STALL) {
      plan();
      feed();
      heat.step(DT, target, molten, fan);
      if (state == JobState.PRINTING && !faulty) {
        melted += heat.meltingDuty() * DT;
        well += DT;
      }
      molten = 0;
      now += DT;
      if (now >= nextSample) {
        nextSample += period;
        sample(readings);
      }
    }
    return new Truth(
        onset, stall.seconds(), printing, ideal.alarmSeconds(), well > 0 ? melted / well : 0);
  }

  private void plan() {
    if (restLeft > 0) {
      restLeft -= DT;
      state = JobState.IDLE;
      if (restLeft <= 0) {
        job++;
        jobLeft = draw.scaled(1200, 20_000);
        path = new Toolpath(draw);
        fan = draw.oneOf(0, 0.3, 0.5, 1);
        target = targetCelsius;
      }
      return;
    }
    if (state == JobState.IDLE && heat.celsius() > target - 2) {
      state = JobState.PRINTING;
      purgeLeft = draw.between(10, 60);
    }
    if (state == JobState.IDLE) {
      return;
    }
    fanLeft -= DT;
    if (fanLeft <= 0) {
      fanLeft = fanIsBusy ? draw.scaled(20, 1500) : draw.scaled(600, 10_000);
      fan = draw.oneOf(0, 0.3, 0.5, 1);
    }
    if (!faulty && now >= onset && state == JobState.PRINTING && purgeLeft <= 0) {
      faulty = true;
      onset = now;
      ends = now + LONGEST_FAULT;
    }
    if (faulty) {
      bore.beginOnce();
      return;
    }
    if (pauseLeft > 0) {
      pauseLeft -= DT;
      state = pauseLeft > 0 ? JobState.PAUSED : JobState.PRINTING;
      return;
    }
    jobLeft -= DT;
    if (jobLeft <= 0) {
      restLeft = draw.scaled(60, 1500);
      target = draw.chance(0.5) ? 0 : targetCelsius;
      return;
    }
    if (draw.chance(DT / 9000)) {
      pauseLeft = draw.scaled(20, 400);
      purgeLeft = draw.chance(0.5) ? draw.between(20, 80) : 0;
    }
  }

  private void feed() {
    if (state != JobState.PRINTING) {
      return;
    }
    printing += DT;
    double asked;
    if (purgeLeft > 0) {
      asked = 4 * DT;
      purgeLeft -= asked;
    } else {
      asked = path.next(DT);
    }
    commanded += asked;
    double moved = asked;
    double speed = Math.abs(asked) / DT;
    if (asked > 0) {
      moved = bore.through(asked, speed, DT);
    } else if (asked < 0) {
      bore.retracted();
    }
    double seen = moved;
    if (faulty && fault == Fault.RUNOUT) {
      sinceRunout += moved;
      seen = 0;
      moved = sinceRunout > pathMm ? 0 : moved;
    }
    if (faulty && fault == Fault.HEAT_CREEP && breakFanFails) {
      heat.breakFanFails(DT);
    }
    wheel.move(seen, speed, DT);
    ideal.take(now, commanded, wheel.told(), faulty);
    passed += moved;
    molten = Math.max(0, passed - farthest);
    farthest = Math.max(farthest, passed);
    stall.take(now, asked, seen, faulty);
  }

  private void sample(Consumer<Reading> readings) {
    if (draw.chance(missing)) {
      return;
    }
    long arrival = (long) ((now + Math.abs(draw.normal(0.05))) * 1e9);
    long at = ((long) (now * 1e3)) * 1_000_000L;
    Sample sample = Sample.timed(WREN, at, arrival);
    send(sample, readings);
    if (draw.chance(0.01)) {
      send(sample, readings);
    }
  }

  private void send(Sample sample, Consumer<Reading> readings) {
    readings.accept(
        new Reading.HotEndTemperature(sample, Math.max(-40, Math.min(500, heat.celsius()))));
    readings.accept(new Reading.HotEndTarget(sample, target));
    readings.accept(
        new Reading.HeaterDuty(sample, Math.round(heat.duty() * dutyCounts) / dutyCounts));
    readings.accept(new Reading.FilamentCommanded(sample, Math.round(commanded * 1000) / 1000.0));
    readings.accept(new Reading.FilamentMeasured(sample, wheel.told()));
    if (tellsState) {
      readings.accept(new Reading.JobStatus(sample, state));
      readings.accept(new Reading.Job(sample, state == JobState.IDLE ? "" : "job-" + job));
    }
    if (tellsFan) {
      readings.accept(new Reading.Fan(sample, fan));
    }
    if (tellsLoad) {
      readings.accept(new Reading.FeedLoad(sample, bore.load() * (1 + draw.normal(0.1))));
    }
  }
}
