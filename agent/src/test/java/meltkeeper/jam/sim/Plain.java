package meltkeeper.jam.sim;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import meltkeeper.jam.score.Alarms;
import meltkeeper.protocol.Reading;

/**
 * The plain ways on one printer, each at all its limits at once, by windows of 10 s. The encoder's
 * scale is told to them. Mutable.
 */
public final class Plain {

  private static final double WINDOW_SECONDS = 10;
  private static final int WINDOWS_PER_MINUTE = 6;
  private static final double LEAST_MM = 10;

  private static final double SPREAD_OF_ALL = 0.03;
  private static final double ALLOWANCE = 0.5;

  /** A small share, for at long run lengths a larger one sees small shifts much later. */
  private static final double SMOOTHS = 0.05;

  private static final double SMOOTHED_SPREAD = Math.sqrt(SMOOTHS / (2 - SMOOTHS));

  private final Map<Way, Alarms[]> alarms = new EnumMap<>(Way.class);
  private final FirstWindows usual = new FirstWindows();
  private final double scale;
  private final double[] asked = new double[WINDOWS_PER_MINUTE];
  private final double[] seen = new double[WINDOWS_PER_MINUTE];
  private int windows;
  private double commanded = Double.NaN;
  private double openedAt = Double.NaN;
  private double openedAsked;
  private double openedSeen;
  private double sum;
  private double taughtSum;
  private double smoothed;

  /** Watches an encoder that shows so much of a millimetre fed. */
  public Plain(double scale) {
    this.scale = scale;
    for (Way way : Way.values()) {
      alarms.put(way, Stream.generate(Alarms::new).limit(way.limits()).toArray(Alarms[]::new));
    }
  }

  /** Takes a reading of the printer. */
  public void take(Reading reading) {
    if (reading instanceof Reading.FilamentCommanded now) {
      commanded = now.millimetres();
    } else if (reading instanceof Reading.FilamentMeasured now) {
      pair(now.sample().atNanos() / 1e9, now.millimetres() / scale);
    }
  }

  private void pair(double at, double measured) {
    double since = at - openedAt;
    if (since < WINDOW_SECONDS) {
      return;
    }
    if (since < 3 * WINDOW_SECONDS) {
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
    tell(Way.THRESHOLD, at, minute < LEAST_MM ? 0 : 1 - DoubleStream.of(seen).sum() / minute);
    if (moreAsked >= LEAST_MM / WINDOWS_PER_MINUTE) {
      chart(at, 1 - moreSeen / moreAsked);
    }
  }

  private void chart(double at, double missing) {
    sum = added(sum, missing / SPREAD_OF_ALL, Way.CUSUM);
    tell(Way.CUSUM, at, sum);
    if (!usual.isKnown()) {
      usual.take(missing);
      return;
    }
    double strays = usual.standardised(missing);
    smoothed += SMOOTHS * (strays - smoothed);
    taughtSum = added(taughtSum, strays, Way.TAUGHT_CUSUM);
    tell(Way.SHEWHART, at, strays);
    tell(Way.EWMA, at, smoothed / SMOOTHED_SPREAD);
    tell(Way.TAUGHT_CUSUM, at, taughtSum);
  }

  /** A sum that went far beyond its deafest limit would never come down again. */
  private static double added(double sum, double strays, Way way) {
    double most = 2 * way.limit(way.limits() - 1);
    return Math.min(most, Math.max(0, sum + strays - ALLOWANCE));
  }

  private void tell(Way way, double at, double evidence) {
    for (int i = 0; i < way.limits(); i++) {
      of(way, i).at(at, evidence > way.limit(i));
    }
  }

  /** The alarms of a way at the limit at that place. */
  public Alarms of(Way way, int place) {
    return Objects.requireNonNull(alarms.get(way))[place];
  }
}
