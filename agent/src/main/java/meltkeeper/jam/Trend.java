package meltkeeper.jam;

import java.util.Optional;

/**
 * Where the share of the usual feed stands and how it moves, by double exponential smoothing over
 * windows (Holt 1957, from memory). Mutable.
 */
final class Trend {

  private static final double STALL_SHARE = 0.1;
  private static final double MINUTE_NANOS = 60e9;
  private static final double FOLLOWS = 0.4;
  private static final double TURNS = 0.25;

  private double share = 1;
  private double perMinute;
  private long atNanos = Long.MIN_VALUE;

  void take(long now, double newShare) {
    if (atNanos != Long.MIN_VALUE && now > atNanos) {
      double minutes = (now - atNanos) / MINUTE_NANOS;
      double expected = share + perMinute * minutes;
      double moved = expected + FOLLOWS * (newShare - expected);
      perMinute += TURNS * ((moved - share) / minutes - perMinute);
      share = moved;
    } else {
      share = newShare;
    }
    atNanos = now;
  }

  /**
   * Minutes until a tenth of the usual feed is left. The fall slows down as a bore closes (a model,
   * from common practice), so the straight line is nearer to the low end.
   */
  Optional<MinutesToStall> minutesToStall() {
    if (!(perMinute < -1e-4)) {
      return Optional.empty();
    }
    double straight = Math.max(0, (share - STALL_SHARE) / -perMinute);
    return Optional.of(new MinutesToStall(0.5 * straight, 2.5 * straight));
  }

  double share() {
    return share;
  }

  void rearm() {
    share = 1;
    perMinute = 0;
    atNanos = Long.MIN_VALUE;
  }

  void keep(Memory memory) {
    share = memory.number("share", share);
    perMinute = memory.number("perMinute", perMinute);
    atNanos = memory.count("at", atNanos);
  }
}
