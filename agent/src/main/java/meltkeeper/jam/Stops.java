package meltkeeper.jam;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * The suppositions that the feed stopped, one for each moment at which it may have.
 *
 * <p>When it stopped makes a difference: a few windows later, health has explained the fall of the
 * duty by a draught, and a stop supposed only then has lost what speaks for it loudest. The best of
 * the sums from each moment on is what a CUSUM is (Page 1954). One that does not bear out is
 * dropped, and so is one that took too long: what adds up so slowly is a model that is a little
 * off. Mutable.
 */
final class Stops {

  /** Shares of a window's filament that may be through before the stop. */
  private static final double[] THROUGH = {0, 1.0 / 3, 2.0 / 3};

  private static final int MOST_KEPT = 4;
  private static final double HOPELESS = -5;

  /** A quarter of an hour, or more. */
  private static final int TOO_LONG_WINDOWS = 110;

  /** The best first; after {@link #suppose}, the new ones stand at the end. */
  private final List<Stop> stops = new ArrayList<>();

  private final Trust trust = new Trust();

  /**
   * Supposes that it stopped in the newest window.
   *
   * @param healthy the level before that window
   * @param asked feeds of that window and those before, mm/s, newest first
   */
  void suppose(DutyLevel healthy, double[] asked) {
    for (double through : THROUGH) {
      stops.add(new Stop(healthy, asked, through));
    }
  }

  /**
   * Weighs the newest window, in which a stop was supposed as well.
   *
   * @param ratios log-likelihood of a stop less that of health
   */
  void weigh(ToDoubleFunction<Stop> ratios, double limit) {
    Stop favourite = speaks() ? stops.get(0) : stops.get(stops.size() - THROUGH.length);
    double most = LikelihoodSum.most(limit, trust);
    double before = favourite.sum();
    for (Stop stop : stops) {
      stop.add(LikelihoodSum.clipped(ratios.applyAsDouble(stop)), most);
    }
    double favoured = favourite.sum() - before;
    stops.removeIf(stop -> isGivenUp(stop, limit));
    stops.sort(Comparator.comparingDouble(Stop::sum).reversed());
    if (stops.size() > MOST_KEPT) {
      stops.subList(MOST_KEPT, stops.size()).clear();
    }
    trust.take(favoured, !speaks());
  }

  private boolean isGivenUp(Stop stop, double limit) {
    return stop.sum() < HOPELESS
        || (stop.windows() > TOO_LONG_WINDOWS && trust.share() * stop.sum() < limit);
  }

  private boolean speaks() {
    return !stops.isEmpty() && stops.get(0).sum() > 0;
  }

  /** The best sum as a share of its limit, as far as it can be trusted. */
  double evidence(double limit) {
    return speaks() ? trust.share() * stops.get(0).sum() / limit : 0;
  }

  void rearm() {
    stops.clear();
    trust.rearm();
  }

  void keep(Memory memory) {
    int count = (int) Math.min(MOST_KEPT, memory.count("count", stops.size()));
    while (stops.size() < MOST_KEPT) {
      stops.add(new Stop());
    }
    for (int i = 0; i < MOST_KEPT; i++) {
      stops.get(i).keep(memory.within("stop" + i));
    }
    stops.subList(count, MOST_KEPT).clear();
    trust.keep(memory);
  }
}
