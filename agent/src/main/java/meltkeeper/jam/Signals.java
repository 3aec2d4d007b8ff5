package meltkeeper.jam;

import java.util.Optional;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.NoticeKind;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Sample;

/**
 * The newest value of each signal, and the time up to which all is known. Readings of one time make
 * one moment, which is over when a later reading comes. Mutable.
 */
final class Signals implements Reading.Visitor<Boolean> {

  private static final int MANY_LATE = 40;

  long atNanos = Long.MIN_VALUE;
  double celsius = Double.NaN;
  double targetCelsius = Double.NaN;
  double duty = Double.NaN;
  double fan = Double.NaN;
  double load = Double.NaN;
  long celsiusNanos = Long.MIN_VALUE;
  long dutyNanos = Long.MIN_VALUE;
  long loadNanos = Long.MIN_VALUE;
  long commandedNanos = Long.MIN_VALUE;
  long measuredNanos = Long.MIN_VALUE;
  final Total commanded = new Total();
  final Total measured = new Total();
  Optional<JobState> state = Optional.empty();
  String job = "";
  String material = "";

  /** Counts what makes the watch begin anew: another job, material, target or state. */
  long changes;

  /** What the printer itself said of trouble since the last change. */
  Optional<NoticeKind> trouble = Optional.empty();

  private long troubleNanos = Long.MIN_VALUE;

  private int late;

  /**
   * True when the reading is of a later time than all before, so that the moment before is over.
   */
  boolean endsMoment(Reading reading) {
    return !reading.sample().retained()
        && atNanos != Long.MIN_VALUE
        && reading.sample().atNanos() > atNanos;
  }

  /** Takes a reading; false when it is too late to count. */
  boolean take(Reading reading) {
    Sample sample = reading.sample();
    if (sample.retained()) {
      return reading.accept(this);
    }
    if (sample.atNanos() < atNanos) {
      late++;
      if (late < MANY_LATE) {
        return false;
      }
      setClockBack();
    }
    late = 0;
    atNanos = sample.atNanos();
    return reading.accept(this);
  }

  /** A printer's clock that was set back: what was known is not of this time. */
  private void setClockBack() {
    changes++;
    celsiusNanos = Long.MIN_VALUE;
    dutyNanos = Long.MIN_VALUE;
    loadNanos = Long.MIN_VALUE;
    commandedNanos = Long.MIN_VALUE;
    measuredNanos = Long.MIN_VALUE;
  }

  @Override
  public Boolean visit(Reading.HotEndTemperature reading) {
    if (!reading.sample().retained()) {
      celsius = reading.celsius();
      celsiusNanos = atNanos;
    }
    return true;
  }

  @Override
  public Boolean visit(Reading.HotEndTarget reading) {
    if (Double.isNaN(targetCelsius) || Math.abs(targetCelsius - reading.celsius()) > 2) {
      changes++;
      targetCelsius = reading.celsius();
    }
    return true;
  }

  @Override
  public Boolean visit(Reading.HeaterDuty reading) {
    if (!reading.sample().retained()) {
      duty = reading.fraction();
      dutyNanos = atNanos;
    }
    return true;
  }

  @Override
  public Boolean visit(Reading.FilamentCommanded reading) {
    if (!reading.sample().retained()) {
      commanded.take(reading.millimetres());
      commandedNanos = atNanos;
    }
    return true;
  }

  @Override
  public Boolean visit(Reading.FilamentMeasured reading) {
    if (!reading.sample().retained()) {
      measured.take(reading.millimetres());
      measuredNanos = atNanos;
    }
    return true;
  }

  @Override
  public Boolean visit(Reading.FeedLoad reading) {
    if (!reading.sample().retained()) {
      load = reading.load();
      loadNanos = atNanos;
    }
    return true;
  }

  @Override
  public Boolean visit(Reading.Fan reading) {
    fan = reading.fraction();
    return true;
  }

  @Override
  public Boolean visit(Reading.JobStatus reading) {
    if (!state.equals(Optional.of(reading.state()))) {
      changes++;
      state = Optional.of(reading.state());
    }
    return true;
  }

  @Override
  public Boolean visit(Reading.Job reading) {
    if (!job.equals(reading.name())) {
      changes++;
      job = reading.name();
    }
    return true;
  }

  @Override
  public Boolean visit(Reading.Material reading) {
    if (!material.equals(reading.name())) {
      changes++;
      material = reading.name();
    }
    return true;
  }

  @Override
  public Boolean visit(Reading.Progress reading) {
    return true;
  }

  @Override
  public Boolean visit(Reading.Notice reading) {
    if (reading.sample().retained()) {
      return true;
    }
    NoticeKind kind = reading.kind();
    if (kind == NoticeKind.RUNOUT || kind == NoticeKind.HEATER_FAULT) {
      trouble = Optional.of(kind);
      troubleNanos = atNanos;
    } else if (kind != NoticeKind.OTHER) {
      changes++;
    }
    return true;
  }

  /** Forgets trouble told before this moment; what a printer tells as it pauses itself stands. */
  void forgetOldTrouble() {
    if (troubleNanos < atNanos) {
      trouble = Optional.empty();
    }
  }

  /** Forgets trouble told in this moment. */
  void forgetNewTrouble() {
    if (troubleNanos == atNanos) {
      trouble = Optional.empty();
    }
  }

  void keep(Memory memory) {
    atNanos = memory.count("at", atNanos);
    celsius = memory.number("celsius", celsius);
    targetCelsius = memory.number("target", targetCelsius);
    duty = memory.number("duty", duty);
    fan = memory.number("fan", fan);
    load = memory.number("load", load);
    celsiusNanos = memory.count("celsiusAt", celsiusNanos);
    dutyNanos = memory.count("dutyAt", dutyNanos);
    loadNanos = memory.count("loadAt", loadNanos);
    commandedNanos = memory.count("commandedAt", commandedNanos);
    measuredNanos = memory.count("measuredAt", measuredNanos);
    commanded.keep(memory.within("commanded"));
    measured.keep(memory.within("measured"));
    String word = memory.word("state", state.map(JobState::word).orElse(""));
    state = JobState.ofWord(word);
    job = memory.word("job", job);
    material = memory.word("material", material);
    changes = memory.count("changes", changes);
    String said = memory.word("trouble", trouble.map(NoticeKind::name).orElse(""));
    trouble = said.isEmpty() ? Optional.empty() : Optional.of(NoticeKind.valueOf(said));
    troubleNanos = memory.count("troubleAt", troubleNanos);
    late = (int) memory.count("late", late);
  }
}
