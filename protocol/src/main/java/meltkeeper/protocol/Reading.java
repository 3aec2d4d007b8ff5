package meltkeeper.protocol;

/**
 * One value that a printer told of itself, in canonical units. Immutable, checked on construction:
 * a reading out of its range cannot exist, so a parser asks first and reports a {@link Rejected}.
 *
 * <p>The family is closed; {@link Visitor} names every case.
 */
public sealed interface Reading {

  /** Where and when. */
  Sample sample();

  /** Calls the visitor's method for this case. */
  <R> R accept(Visitor<R> visitor);

  /**
   * Temperature of the hot end.
   *
   * @param celsius finite, -50 to 600
   */
  record HotEndTemperature(Sample sample, double celsius) implements Reading {

    public HotEndTemperature {
      check(isPossible(celsius), "a temperature from -50 to 600 degrees Celsius", celsius);
    }

    /** True for a finite temperature from -50 to 600 °C. */
    public static boolean isPossible(double celsius) {
      return celsius >= -50 && celsius <= 600;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visit(this);
    }
  }

  /**
   * Temperature that the hot end is asked to hold; 0 is off.
   *
   * @param celsius finite, -50 to 600
   */
  record HotEndTarget(Sample sample, double celsius) implements Reading {

    public HotEndTarget {
      check(
          HotEndTemperature.isPossible(celsius),
          "a target from -50 to 600 degrees Celsius",
          celsius);
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visit(this);
    }
  }

  /**
   * Share of the heater's full power.
   *
   * @param fraction 0 to 1; a hair over, as rounding of a scaled byte gives, counts as 1
   */
  record HeaterDuty(Sample sample, double fraction) implements Reading {

    public HeaterDuty {
      check(isFraction(fraction), "a duty from 0 to 1", fraction);
      fraction = Math.min(1, Math.max(0, fraction));
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visit(this);
    }
  }

  /**
   * Running total of filament asked for, net of retractions.
   *
   * @param millimetres finite, magnitude at most 1e12
   */
  record FilamentCommanded(Sample sample, double millimetres) implements Reading {

    public FilamentCommanded {
      check(isTotal(millimetres), "a running total in millimetres, at most 1e12", millimetres);
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visit(this);
    }
  }

  /**
   * Running total of filament seen to move, net of retractions unless the encoder is blind to
   * direction.
   *
   * @param millimetres finite, magnitude at most 1e12
   */
  record FilamentMeasured(Sample sample, double millimetres) implements Reading {

    public FilamentMeasured {
      check(isTotal(millimetres), "a running total in millimetres, at most 1e12", millimetres);
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visit(this);
    }
  }

  /**
   * Load of the feed motor in the printer's own unit.
   *
   * @param load finite
   */
  record FeedLoad(Sample sample, double load) implements Reading {

    public FeedLoad {
      check(Double.isFinite(load), "a finite load", load);
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visit(this);
    }
  }

  /**
   * Speed of the part-cooling fan.
   *
   * @param fraction 0 to 1
   */
  record Fan(Sample sample, double fraction) implements Reading {

    public Fan {
      check(isFraction(fraction), "a fan speed from 0 to 1", fraction);
      fraction = Math.min(1, Math.max(0, fraction));
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visit(this);
    }
  }

  /** What the printer does. */
  record JobStatus(Sample sample, JobState state) implements Reading {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visit(this);
    }
  }

  /**
   * The job at work.
   *
   * @param name as the printer spells it; empty when there is none
   */
  record Job(Sample sample, String name) implements Reading {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visit(this);
    }
  }

  /**
   * The material loaded.
   *
   * @param name as the printer spells it; empty when unknown
   */
  record Material(Sample sample, String name) implements Reading {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visit(this);
    }
  }

  /**
   * Share of the job that is done.
   *
   * @param fraction 0 to 1
   */
  record Progress(Sample sample, double fraction) implements Reading {

    public Progress {
      check(isFraction(fraction), "a progress from 0 to 1", fraction);
      fraction = Math.min(1, Math.max(0, fraction));
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visit(this);
    }
  }

  /** Something that the printer said in words. */
  record Notice(Sample sample, NoticeKind kind, String text) implements Reading {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.visit(this);
    }
  }

  /** True for a share from 0 to 1, with 0.005 to spare at each end for rounding in a scale. */
  static boolean isFraction(double value) {
    return value >= -0.005 && value <= 1.005;
  }

  /** True for a running total that a spool could ever make. */
  static boolean isTotal(double millimetres) {
    return Math.abs(millimetres) <= 1e12;
  }

  private static void check(boolean possible, String allowed, double found) {
    if (!possible) {
      throw new IllegalArgumentException(found + " is not " + allowed);
    }
  }

  /** One method a case. */
  interface Visitor<R> {
    R visit(HotEndTemperature reading);

    R visit(HotEndTarget reading);

    R visit(HeaterDuty reading);

    R visit(FilamentCommanded reading);

    R visit(FilamentMeasured reading);

    R visit(FeedLoad reading);

    R visit(Fan reading);

    R visit(JobStatus reading);

    R visit(Job reading);

    R visit(Material reading);

    R visit(Progress reading);

    R visit(Notice reading);
  }
}
