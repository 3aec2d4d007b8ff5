package meltkeeper.jam.sim;

import java.util.stream.DoubleStream;
import meltkeeper.jam.score.Alarms;
import meltkeeper.protocol.Reading;

/**
 * Two plain ways to watch an encoder whose scale is told to them, each at a row of limits at once:
 * a fixed threshold on the share of the last minute, and a CUSUM of windows of 10 s with a fixed
 * mean of 1 and spread of 0.03, k = 0.5. Neither learns. Mutable.
 */
public final class Plain {

  /** Thresholds of the share, from wary to deaf. */
  public static final double[] THRESHOLDS =
      DoubleStream.iterate(0.95, t -> t > 0.02, t -> t - 0.05).toArray();

  /** Limits of the CUSUM, from wary to deaf. */
  public static final double[] LIMITS =
      DoubleStream.iterate(8, h -> h < 4000, h -> h * 1.35).toArray();

  private static final double SPREAD = 0.03;
  private static final double WINDOW_SECONDS = 10;
  private static final int WINDOWS_PER_MINUTE = 6;
  private static final double LEAST_MM = 10;

  private final Alarms[] byThreshold = alarms(THRESHOLDS.length);
  private final Alarms[] byLimit = alarms(LIMITS.length);
  private final double scale;
  private final double[] asked = new double[WINDOWS_PER_MINUTE];
  private final double[] seen = new double[WINDOWS_PER_MINUTE];
  private int windows;
  private double commanded = Double.NaN;
  private double openedAt = Double.NaN;
  private double openedAsked;
  private double openedSeen;
  private double sum;

  public Plain(double scale) {
    this.scale = scale;
  }

  private static Alarms[] alarms(int count) {
    Alarms[] all = new Alarms[count];
    for (int i = 0; i < count; i++) {
      all[i] = new Alarms();
    }
    return all;
  }

  public void take(Reading reading) {
    if (reading instanceof Reading.FilamentCommanded now) {
      commanded = now.millimetres();
    } else if (reading instanceof Reading.FilamentMeasured now) {
      pair(now.sample().atNanos() / 1e9, now.millimetres() / scale);
    }
  }

  private void pair(double at, double measured) {
    if (!Double.isNaN(openedAt) && at - openedAt < WINDOW_SECONDS) {
      return;
    }
    if (!Double.isNaN(openedAt) && at - openedAt < 3 * WINDOW_SECONDS) {
      close(at, commanded - openedAsked, measured - openedSeen);
    }
    openedAt = at;
    openedAsked = commanded;
    openedSeen = measured;
  }

  private void close(double at, double moreAsked, double moreSeen) {
    int place = windows % WINDOWS_PER_MINUTE;
    asked[place] = moreAsked;
    seen[place] = moreSeen;
    windows++;
    double minute = DoubleStream.of(asked).sum();
    double share = DoubleStream.of(seen).sum() / minute;
    for (int i = 0; i < THRESHOLDS.length; i++) {
      byThreshold[i].at(at, minute >= LEAST_MM && share < THRESHOLDS[i]);
    }
    if (moreAsked >= LEAST_MM / WINDOWS_PER_MINUTE) {
      sum = Math.max(0, sum + (1 - moreSeen / moreAsked) / SPREAD - 0.5);
    }
    double highest = LIMITS[LIMITS.length - 1];
    sum = Math.min(sum, 2 * highest);
    for (int i = 0; i < LIMITS.length; i++) {
      byLimit[i].at(at, sum > LIMITS[i]);
    }
  }

  public Alarms ofThreshold(int index) {
    return byThreshold[index];
  }

  public Alarms ofLimit(int index) {
    return byLimit[index];
  }
}
