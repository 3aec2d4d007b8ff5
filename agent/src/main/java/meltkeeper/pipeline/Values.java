package meltkeeper.pipeline;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import meltkeeper.jam.Outlook;
import meltkeeper.ledger.Tally;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Signal;

/** The latest value of each signal of one hot end. Mutable, for the writer's thread. */
final class Values implements Reading.Visitor<Signal> {

  private final Map<Signal, Double> numbers = new EnumMap<>(Signal.class);
  private final Map<Signal, String> texts = new EnumMap<>(Signal.class);
  private Optional<JobState> state = Optional.empty();
  private long heardNanos = Long.MIN_VALUE;

  void show(Reading reading) {
    heardNanos = Math.max(heardNanos, reading.sample().arrivalNanos());
    reading.accept(this);
  }

  HotEndLive snapshot(HotEnd hotEnd, Tally total, Outlook watch, long blindNanos) {
    return new HotEndLive(
        hotEnd,
        heardNanos,
        number(Signal.HOT_END_TEMPERATURE),
        number(Signal.HOT_END_TARGET),
        number(Signal.HEATER_DUTY),
        state,
        texts.getOrDefault(Signal.JOB, ""),
        texts.getOrDefault(Signal.MATERIAL, ""),
        number(Signal.PROGRESS),
        total,
        watch,
        blindNanos);
  }

  private OptionalDouble number(Signal signal) {
    Double value = numbers.get(signal);
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  private Signal number(Signal signal, double value) {
    numbers.put(signal, value);
    return signal;
  }

  private Signal text(Signal signal, String value) {
    texts.put(signal, value);
    return signal;
  }

  @Override
  public Signal visit(Reading.HotEndTemperature reading) {
    return number(Signal.HOT_END_TEMPERATURE, reading.celsius());
  }

  @Override
  public Signal visit(Reading.HotEndTarget reading) {
    return number(Signal.HOT_END_TARGET, reading.celsius());
  }

  @Override
  public Signal visit(Reading.HeaterDuty reading) {
    return number(Signal.HEATER_DUTY, reading.fraction());
  }

  @Override
  public Signal visit(Reading.FilamentCommanded reading) {
    return number(Signal.FILAMENT_COMMANDED, reading.millimetres());
  }

  @Override
  public Signal visit(Reading.FilamentMeasured reading) {
    return number(Signal.FILAMENT_MEASURED, reading.millimetres());
  }

  @Override
  public Signal visit(Reading.FeedLoad reading) {
    return number(Signal.FEED_LOAD, reading.load());
  }

  @Override
  public Signal visit(Reading.Fan reading) {
    return number(Signal.FAN, reading.fraction());
  }

  @Override
  public Signal visit(Reading.Progress reading) {
    return number(Signal.PROGRESS, reading.fraction());
  }

  @Override
  public Signal visit(Reading.JobStatus reading) {
    state = Optional.of(reading.state());
    return Signal.JOB_STATE;
  }

  @Override
  public Signal visit(Reading.Job reading) {
    return text(Signal.JOB, reading.name());
  }

  @Override
  public Signal visit(Reading.Material reading) {
    return text(Signal.MATERIAL, reading.name());
  }

  @Override
  public Signal visit(Reading.Notice reading) {
    return text(Signal.NOTICE, reading.text());
  }
}
