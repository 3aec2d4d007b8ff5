package meltkeeper.jam;

import java.util.Optional;

/**
 * How the share of the usual feed falls, and when a tenth of it will be left.
 *
 * <p>Where a bore closes evenly, a melt of power-law index n that a gear pushes up to its grip
 * passes {@code ((1 - t/tau)^(3n+1) / load)^(1/n)} of what is asked for, so that the share to the
 * power n/(3n+1), 0.17 to 0.25 for printed plastics, falls as a straight line. That line is fitted
 * to the newest windows, from where a CUSUM of the shares last stood at zero. Few windows say
 * little of its slope, so that it is held against what is usual of clogs. Mutable.
 */
final class Trend {

  private static final double STALL_SHARE = 0.1;
  private static final double LEAST_SHARE = 0.02;
  private static final double POWER = 0.2;
  private static final double FALL_TO_STALL = 1 - Math.pow(STALL_SHARE, POWER);
  private static final double LEAST_FALL = 0.05;

  private static final double ALLOWANCE = 0.5;
  private static final double FORGETS = Math.exp(-1.0 / 16);
  private static final double MINUTE_NANOS = 60e9;

  /** Windows stray further than their spread says, and hang together. */
  private static final double DOUBT = 2;

  /** Spread of the logarithm of the time for what is not known of bore and melt. */
  private static final double MODEL_SPREAD = 0.6;

  /** What is usual of clogs: minutes that are left, and the spread of their logarithm. */
  private static final double USUAL_MINUTES = 30;

  private static final double USUAL_SPREAD = 1.2;

  /** Fast moves slip first and slow ones later, so that the fall steepens on the whole. */
  private static final double STEEPENS = 0.5;

  /** So many times sooner or later come four stalls in five, by simulation of other seeds. */
  private static final double SPAN = 4;

  private static final double FOLLOWS = 0.4;
  private static final double HEALTHY = 0.7;

  private double share;
  private double spread = 0.03;
  private double lacking;
  private long atNanos = Long.MIN_VALUE;
  private double weight;
  private double minutes;
  private double squares;
  private double falls;
  private double products;

  /**
   * Takes a window.
   *
   * @param newShare of what is usual
   * @param newSpread of that share from window to window
   */
  void take(long now, double newShare, double newSpread) {
    spread = newSpread;
    share += FOLLOWS * (newShare - share);
    lacking = Math.max(0, lacking + (1 - newShare) / newSpread - ALLOWANCE);
    if (lacking == 0) {
      forget();
    } else {
      age((now - atNanos) / MINUTE_NANOS);
      falls += 1 - Math.pow(Math.max(LEAST_SHARE, newShare), POWER);
    }
    weight += 1;
    atNanos = now;
  }

  /** Moves the origin of time to now. */
  private void age(double since) {
    squares = FORGETS * (squares - 2 * since * minutes + since * since * weight);
    products = FORGETS * (products - since * falls);
    minutes = FORGETS * (minutes - since * weight);
    falls *= FORGETS;
    weight *= FORGETS;
  }

  /** Minutes until a tenth of the usual feed is left; four stalls in five come in the range. */
  Optional<MinutesToStall> minutesToStall() {
    double width = weight > 0 ? squares - minutes * minutes / weight : 0;
    if (!(width > 0)) {
      return Optional.empty();
    }
    double slope = (products - minutes * falls / weight) / width;
    double error = DOUBT * POWER * spread / Math.sqrt(width);
    double fallen = (falls - Math.max(0, slope) * minutes) / weight;
    double left = Math.max(LEAST_FALL, FALL_TO_STALL - Math.max(0, fallen));
    double perMinute = Math.max(slope, 0.5 * error);
    double told = 1 / (Math.pow(error / perMinute, 2) + MODEL_SPREAD * MODEL_SPREAD);
    double usual = 1 / (USUAL_SPREAD * USUAL_SPREAD);
    double logarithm =
        (told * Math.log(left / perMinute) + usual * Math.log(USUAL_MINUTES)) / (told + usual);
    double likely = STEEPENS * Math.exp(logarithm);
    return Optional.of(new MinutesToStall(likely / SPAN, likely * SPAN));
  }

  /**
   * True when the newest windows since it began anew were well fed: what stops now, stops at once.
   */
  boolean fedWell() {
    return share > HEALTHY;
  }

  void rearm() {
    share = 0;
    lacking = 0;
    forget();
  }

  private void forget() {
    weight = 0;
    minutes = 0;
    squares = 0;
    falls = 0;
    products = 0;
  }

  void keep(Memory memory) {
    share = memory.number("share", share);
    spread = memory.number("spread", spread);
    lacking = memory.number("lacking", lacking);
    atNanos = memory.count("at", atNanos);
    weight = memory.number("weight", weight);
    minutes = memory.number("minutes", minutes);
    squares = memory.number("squares", squares);
    falls = memory.number("falls", falls);
    products = memory.number("products", products);
  }
}
