package meltkeeper.demo;

import java.time.Duration;
import java.util.List;
import meltkeeper.protocol.JobState;

/**
 * A printer's working day: batch after batch, each heated up, printed, cooled and cleared, from
 * opening until the shop closes; the same again the next day. Everything turns on whole tens of
 * seconds, so that whoever samples at a divisor of that sees each turn when it happens.
 */
final class Shift {

  private static final long TICK_NANOS = Duration.ofSeconds(10).toNanos();
  private static final long DAY_NANOS = Duration.ofDays(1).toNanos();
  private static final double AT_TARGET_KELVIN = 1.5;
  private static final Duration HOLD_AFTER = Duration.ofMinutes(40);
  private static final Duration HOLD = Duration.ofMinutes(3);

  private enum Phase {
    WAITING,
    HEATING,
    FEEDING,
    HOLDING
  }

  private final List<Order> orders;
  private final long opensNanos;
  private final long openNanos;
  private final long clearingNanos;

  private Phase phase = Phase.WAITING;
  private int batch;
  private long turnsAtNanos;
  private long fedNanos;

  /**
   * @param opensNanos when the first day's work begins
   * @param open how long batches are begun each day
   * @param clearing from the end of one batch to the beginning of the next
   */
  Shift(List<Order> orders, long opensNanos, Duration open, Duration clearing) {
    this.orders = List.copyOf(orders);
    this.opensNanos = opensNanos;
    this.openNanos = open.toNanos();
    this.clearingNanos = clearing.toNanos();
    this.turnsAtNanos = opensNanos;
  }

  /** Takes note of the time, once every step; the steps must hit each whole ten seconds. */
  void at(long nanos, double celsius) {
    if ((nanos - opensNanos) % TICK_NANOS != 0) {
      return;
    }
    if (phase == Phase.FEEDING) {
      fedNanos += TICK_NANOS;
    }
    switch (phase) {
      case WAITING -> begin(nanos);
      case HEATING -> {
        if (Math.abs(celsius - order().celsius()) < AT_TARGET_KELVIN) {
          phase = Phase.FEEDING;
        }
      }
      case FEEDING -> feed(nanos);
      case HOLDING -> {
        if (nanos >= turnsAtNanos) {
          phase = Phase.FEEDING;
        }
      }
    }
  }

  private void begin(long nanos) {
    if (nanos >= turnsAtNanos) {
      fedNanos = 0;
      phase = Phase.HEATING;
    }
  }

  private void feed(long nanos) {
    if (fedNanos >= order().feeding().toNanos()) {
      phase = Phase.WAITING;
      batch++;
      turnsAtNanos = nextStart(nanos + clearingNanos);
    } else if (fedNanos == HOLD_AFTER.toNanos()) {
      phase = Phase.HOLDING;
      turnsAtNanos = nanos + HOLD.toNanos();
    }
  }

  private long nextStart(long nanos) {
    long intoDay = Math.floorMod(nanos - opensNanos, DAY_NANOS);
    return intoDay <= openNanos ? nanos : nanos - intoDay + DAY_NANOS;
  }

  Order order() {
    return orders.get(batch % orders.size());
  }

  /** Counts the batches, the first being 0. */
  int batch() {
    return batch;
  }

  boolean feeding() {
    return phase == Phase.FEEDING;
  }

  double targetCelsius() {
    return phase == Phase.WAITING ? 0 : order().celsius();
  }

  JobState state() {
    return switch (phase) {
      case WAITING -> JobState.IDLE;
      case HOLDING -> JobState.PAUSED;
      case HEATING, FEEDING -> JobState.PRINTING;
    };
  }

  /** How far the batch has come, 0 to 1. */
  double progress() {
    return phase == Phase.WAITING ? 0 : (double) fedNanos / order().feeding().toNanos();
  }
}
