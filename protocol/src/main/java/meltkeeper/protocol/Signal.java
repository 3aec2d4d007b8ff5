package meltkeeper.protocol;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * What a mapping may read from a payload, in the order in which one message's readings are told:
 * the state of the job first, then filament, then temperature, so that whoever credits an interval
 * ending here already knows what was fed in it.
 */
public enum Signal {
  JOB_STATE(Form.WORD, "printing, paused or idle"),
  JOB(Form.TEXT, "a name"),
  MATERIAL(Form.TEXT, "a name"),
  NOTICE(Form.TEXT, "a text"),
  PROGRESS(Form.NUMBER, "0 to 1"),
  FAN(Form.NUMBER, "0 to 1"),
  FEED_LOAD(Form.NUMBER, "a number"),
  FILAMENT_COMMANDED(Form.NUMBER, "a running total in millimetres"),
  FILAMENT_MEASURED(Form.NUMBER, "a running total in millimetres"),
  HEATER_DUTY(Form.NUMBER, "0 to 1"),
  HOT_END_TARGET(Form.NUMBER, "-50 to 600 degrees Celsius"),
  HOT_END_TEMPERATURE(Form.NUMBER, "-50 to 600 degrees Celsius");

  /** What the value looks like. */
  public enum Form {
    NUMBER,
    WORD,
    TEXT
  }

  private final Form form;
  private final String allowed;
  private final String label = name().toLowerCase(Locale.ROOT).replace('_', '-');

  Signal(Form form, String allowed) {
    this.form = form;
    this.allowed = allowed;
  }

  public Form form() {
    return form;
  }

  /** The values allowed, in words. */
  public String allowed() {
    return allowed;
  }

  /** The name in configurations, {@code hot-end-temperature} and the like. */
  public String label() {
    return label;
  }

  /** The signal of that label. */
  public static Optional<Signal> ofLabel(String label) {
    return Arrays.stream(values()).filter(s -> s.label.equals(label)).findFirst();
  }

  /** True when a reading of this signal may hold the number; always false for the other forms. */
  public boolean admits(double value) {
    return switch (this) {
      case HOT_END_TEMPERATURE, HOT_END_TARGET -> Reading.HotEndTemperature.isPossible(value);
      case HEATER_DUTY, FAN, PROGRESS -> Reading.isFraction(value);
      case FILAMENT_COMMANDED, FILAMENT_MEASURED -> Reading.isTotal(value);
      case FEED_LOAD -> Double.isFinite(value);
      case JOB_STATE, JOB, MATERIAL, NOTICE -> false;
    };
  }

  /**
   * The reading of a number.
   *
   * @throws IllegalArgumentException for a number that is not {@link #admits admitted}
   */
  public Reading reading(Sample sample, double value) {
    return switch (this) {
      case HOT_END_TEMPERATURE -> new Reading.HotEndTemperature(sample, value);
      case HOT_END_TARGET -> new Reading.HotEndTarget(sample, value);
      case HEATER_DUTY -> new Reading.HeaterDuty(sample, value);
      case FAN -> new Reading.Fan(sample, value);
      case PROGRESS -> new Reading.Progress(sample, value);
      case FILAMENT_COMMANDED -> new Reading.FilamentCommanded(sample, value);
      case FILAMENT_MEASURED -> new Reading.FilamentMeasured(sample, value);
      case FEED_LOAD -> new Reading.FeedLoad(sample, value);
      case JOB_STATE, JOB, MATERIAL, NOTICE ->
          throw new IllegalArgumentException(label + " is not a number");
    };
  }
}
