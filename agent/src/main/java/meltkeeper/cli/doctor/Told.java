package meltkeeper.cli.doctor;

import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Signal;

/**
 * What a reading tells, as words that can be compared.
 *
 * @param value two readings of one value have the same
 */
record Told(Signal signal, String value) {

  static Told of(Reading reading) {
    return reading.accept(new Teller());
  }

  private static final class Teller implements Reading.Visitor<Told> {
    @Override
    public Told visit(Reading.HotEndTemperature reading) {
      return number(Signal.HOT_END_TEMPERATURE, reading.celsius());
    }

    @Override
    public Told visit(Reading.HotEndTarget reading) {
      return number(Signal.HOT_END_TARGET, reading.celsius());
    }

    @Override
    public Told visit(Reading.HeaterDuty reading) {
      return number(Signal.HEATER_DUTY, reading.fraction());
    }

    @Override
    public Told visit(Reading.FilamentCommanded reading) {
      return number(Signal.FILAMENT_COMMANDED, reading.millimetres());
    }

    @Override
    public Told visit(Reading.FilamentMeasured reading) {
      return number(Signal.FILAMENT_MEASURED, reading.millimetres());
    }

    @Override
    public Told visit(Reading.FeedLoad reading) {
      return number(Signal.FEED_LOAD, reading.load());
    }

    @Override
    public Told visit(Reading.Fan reading) {
      return number(Signal.FAN, reading.fraction());
    }

    @Override
    public Told visit(Reading.Progress reading) {
      return number(Signal.PROGRESS, reading.fraction());
    }

    @Override
    public Told visit(Reading.JobStatus reading) {
      return new Told(Signal.JOB_STATE, reading.state().word());
    }

    @Override
    public Told visit(Reading.Job reading) {
      return new Told(Signal.JOB, reading.name());
    }

    @Override
    public Told visit(Reading.Material reading) {
      return new Told(Signal.MATERIAL, reading.name());
    }

    @Override
    public Told visit(Reading.Notice reading) {
      return new Told(Signal.NOTICE, reading.kind().toString());
    }

    private static Told number(Signal signal, double value) {
      return new Told(signal, String.valueOf(value));
    }
  }
}
