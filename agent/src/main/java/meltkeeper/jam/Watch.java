package meltkeeper.jam;

import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import meltkeeper.jam.runlength.FalseAlarms;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.Reading;

/**
 * The jam watch of one hot end. It looks only while filament is asked for at temperature; another
 * job, material, target or state re-arms it, and never alarms by itself. All that it remembers is
 * in its {@link WatchState}: split at any reading and restored, it says the same. Mutable, for one
 * thread; the same readings give the same findings.
 */
public final class Watch {

  /** Feed ratio, fast feed ratio, dead stop, two of heater balance, feed load. */
  private static final int CHARTS = 6;

  /**
   * Limits are set for so many times the interval wanted: spread and correlation are learned from
   * few windows, and windows now and then stray farther than a normal law has it.
   */
  private static final double CAUTION = 2;

  private static final double NANOS = 1e9;
  private static final double LEAST_GAP_SECONDS = 30;
  private static final double LINGER_SECONDS = 60;
  private static final double SETTLE_SECONDS = 60;
  private static final double NEAR_TARGET = 12;

  /** A printer that pauses itself tells why at once. */
  private static final double NOTICE_SECONDS = 5;

  private final HotEnd hotEnd;
  private final WatchSettings settings;
  private final FalseAlarms wanted;
  private final Signals signals = new Signals();
  private final Sight sight = new Sight();
  private final Judgement judgement = new Judgement();
  private final Materials materials = new Materials();
  private final HeaterWindows heaterWindows = new HeaterWindows();
  private Learned learned;

  private long momentNanos = Long.MIN_VALUE;
  private double periodSeconds = 2;
  private long changesSeen;
  private boolean watching;
  private long settledNanos = Long.MIN_VALUE;
  private long pairNanos = Long.MIN_VALUE;
  private double pairAsked;
  private double pairSeen;
  private long pairCommanded;
  private long pairMeasured;
  private long pairRestarts;
  private final HotIdle idle = new HotIdle();
  private long lookedNanos = Long.MIN_VALUE;

  private Watch(HotEnd hotEnd, WatchSettings settings) {
    this.hotEnd = hotEnd;
    this.settings = settings;
    this.wanted = new FalseAlarms(CAUTION * settings.falseAlarmHours(), CHARTS);
    this.learned = new Learned(settings);
  }

  /** The watch of a hot end of which nothing is known yet. */
  public static Watch opened(HotEnd hotEnd, WatchSettings settings) {
    return new Watch(hotEnd, settings);
  }

  /** The watch that the state was taken from, or goes on as it would. */
  public static Watch restored(WatchState state, WatchSettings settings) {
    Watch watch = new Watch(state.hotEnd(), settings);
    watch.keep((name, now) -> state.values().getOrDefault(name, now));
    return watch;
  }

  /** All that it remembers. */
  public WatchState state() {
    SortedMap<String, String> values = new TreeMap<>();
    keep(
        (name, now) -> {
          values.put(name, now);
          return now;
        });
    return new WatchState(hotEnd, values);
  }

  /** How it stands after the last finished moment. */
  public Outlook outlook() {
    return judgement.outlook();
  }

  /** Printing time in which too little was told to say, since the watch was opened. */
  public long blindNanos() {
    return sight.blindNanos();
  }

  /** Takes a reading of this hot end; a finding when the level changes. */
  public Optional<Finding> step(Reading reading) {
    Optional<Finding> finding = signals.endsMoment(reading) ? momentIsOver() : Optional.empty();
    signals.take(reading);
    return finding;
  }

  private Optional<Finding> momentIsOver() {
    long now = signals.atNanos;
    double step = momentNanos == Long.MIN_VALUE ? 0 : (now - momentNanos) / NANOS;
    momentNanos = now;
    boolean gap = step > Math.max(LEAST_GAP_SECONDS, 5 * periodSeconds) || step < 0;
    if (step > 0) {
      periodSeconds =
          Math.max(
              0.5 * periodSeconds, Math.min(2 * periodSeconds, 0.9 * periodSeconds + 0.1 * step));
      periodSeconds = Math.max(0.01, Math.min(60, periodSeconds));
    }
    idle.take(now, signals.commanded.fed(), isHot());
    boolean looks = isPrinting(now) && isAtTemperature();
    if (gap || looks != watching || changesSeen != signals.changes) {
      rearm(now);
    }
    watching = looks;
    hearNotices(now);
    sight.look(
        signals, looks && isHot(), learned.heater().seesTooLittle(), gap ? 0 : step, periodSeconds);
    if (looks) {
      watchFeed(now);
      watchHeater(now, step);
    } else {
      pair(now);
    }
    return judgement.judge(hotEnd, learned, sight, signals, idle, looks);
  }

  /** A runout while filament is changed, or a fault long after a print, is no jam. */
  private void hearNotices(long now) {
    if (watching) {
      lookedNanos = now;
    } else if (lookedNanos == Long.MIN_VALUE || (now - lookedNanos) / NANOS > NOTICE_SECONDS) {
      signals.forgetNewTrouble();
    }
  }

  /**
   * Begins anew where a part was fitted or taken off, unless it has begun anew since.
   *
   * @param atNanos when it was
   */
  public void partSwapped(long atNanos) {
    if (settledNanos != Long.MIN_VALUE
        && atNanos + (long) (SETTLE_SECONDS * NANOS) > settledNanos) {
      signals.changes++;
    }
  }

  private boolean isHot() {
    return signals.celsius > settings.hotAboveCelsius();
  }

  private boolean isPrinting(long now) {
    if (signals.state.isPresent()) {
      return signals.state.get() == JobState.PRINTING;
    }
    return !signals.commanded.known()
        || (idle.fedNanos() != Long.MIN_VALUE && (now - idle.fedNanos()) / NANOS <= LINGER_SECONDS);
  }

  private boolean isAtTemperature() {
    return isHot()
        && (Double.isNaN(signals.targetCelsius)
            || Math.abs(signals.celsius - signals.targetCelsius) <= NEAR_TARGET);
  }

  private void rearm(long now) {
    if (changesSeen != signals.changes) {
      signals.forgetOldTrouble();
      learned = materials.change(signals.material, learned, settings);
    }
    changesSeen = signals.changes;
    learned.rearm();
    heaterWindows.open(signals);
    settledNanos = now + (long) (SETTLE_SECONDS * NANOS);
    pair(now);
  }

  private void watchFeed(long now) {
    boolean fresh =
        signals.commanded.readings() > pairCommanded
            && (!signals.measured.known() || signals.measured.readings() > pairMeasured);
    if (!fresh) {
      return;
    }
    boolean blindEncoder = settings.encoderIsBlind();
    double asked = (blindEncoder ? signals.commanded.path() : signals.commanded.fed()) - pairAsked;
    double seen = (blindEncoder ? signals.measured.path() : signals.measured.fed()) - pairSeen;
    double seconds = pairNanos == Long.MIN_VALUE ? 0 : (now - pairNanos) / NANOS;
    boolean whole = restarts() == pairRestarts && seconds > 0;
    if (whole && sight.seesMeasured()) {
      learned
          .feed()
          .take(
              asked, seen, seconds, signals.measured.leastStep(), now, wanted, learned.mayLearn());
    }
    if (whole && sight.seesLoad()) {
      learned.load().take(signals.load, asked, seconds, wanted, learned.mayLearn());
    }
    pair(now);
  }

  private long restarts() {
    return signals.commanded.restarts() + signals.measured.restarts();
  }

  private void pair(long now) {
    boolean blindEncoder = settings.encoderIsBlind();
    pairNanos = now;
    pairAsked = blindEncoder ? signals.commanded.path() : signals.commanded.fed();
    pairSeen = blindEncoder ? signals.measured.path() : signals.measured.fed();
    pairCommanded = signals.commanded.readings();
    pairMeasured = signals.measured.readings();
    pairRestarts = restarts();
  }

  private void watchHeater(long now, double step) {
    if (!sight.seesDuty() || !signals.commanded.known() || now < settledNanos) {
      heaterWindows.open(signals);
      return;
    }
    heaterWindows
        .take(signals, step, periodSeconds)
        .ifPresent(window -> learned.heater().take(window, wanted, learned.mayLearn()));
  }

  private void keep(Memory memory) {
    signals.keep(memory.within("signals"));
    sight.keep(memory.within("sight"));
    judgement.keep(memory.within("judgement"));
    materials.keep(memory.within("materials"), settings);
    heaterWindows.keep(memory.within("windows"));
    learned.keep(memory.within("learned"));
    momentNanos = memory.count("moment", momentNanos);
    periodSeconds = memory.number("period", periodSeconds);
    changesSeen = memory.count("changesSeen", changesSeen);
    watching = memory.flag("watching", watching);
    settledNanos = memory.count("settled", settledNanos);
    pairNanos = memory.count("pairAt", pairNanos);
    pairAsked = memory.number("pairAsked", pairAsked);
    pairSeen = memory.number("pairSeen", pairSeen);
    pairCommanded = memory.count("pairCommanded", pairCommanded);
    pairMeasured = memory.count("pairMeasured", pairMeasured);
    pairRestarts = memory.count("pairRestarts", pairRestarts);
    idle.keep(memory.within("idle"));
    lookedNanos = memory.count("lookedAt", lookedNanos);
  }
}
