package meltkeeper.protocol.gcode;

import java.util.Arrays;
import meltkeeper.protocol.HotEnd;

/**
 * Running totals of commanded filament, one for each hot end, net of retractions, in millimetres.
 *
 * <p>The E coordinate belongs to the printer and goes on when the hot end changes (RepRap dialect,
 * common practice, no source); only what it gains is credited to the hot end at work.
 */
final class FilamentAxis {

  /**
   * No first move of a job feeds more. A first place beyond it shows that we began to listen in the
   * middle of a job, and is taken over without counting.
   */
  private static final double LONGEST_FIRST_FEED = 200;

  /** No single command feeds more; a number beyond it was spoilt on the way. */
  static final double LONGEST_FEED = 10_000;

  private final double[] totals = new double[HotEnd.MAX_INDEX + 1];
  private final double[] retracted = new double[HotEnd.MAX_INDEX + 1];
  private final boolean[] told = new boolean[HotEnd.MAX_INDEX + 1];
  private double coordinate;
  private boolean coordinateIsKnown;
  private int lastReported;
  private boolean hasFed;

  /** True once a command fed or retracted. */
  boolean hasFed() {
    return hasFed;
  }

  /** True for a length that one command may feed or retract. */
  static boolean isPossible(double millimetres) {
    return Math.abs(millimetres) <= LONGEST_FEED;
  }

  double total(int hotEnd) {
    return totals[hotEnd];
  }

  /** True the first time for each hot end: nobody has heard yet from where its total counts. */
  boolean beginsTelling(int hotEnd) {
    boolean begins = !told[hotEnd];
    told[hotEnd] = true;
    return begins;
  }

  /** Length of the feed up to a coordinate, below zero for a retraction. */
  double lengthTo(double millimetres) {
    double length = millimetres - coordinate;
    boolean isJoiningIn = !coordinateIsKnown && Math.abs(length) > LONGEST_FIRST_FEED;
    if (isJoiningIn) {
      rename(millimetres);
      return 0;
    }
    return length;
  }

  /** Feeds by a length, and the coordinate goes along. */
  void feed(int hotEnd, double millimetres) {
    totals[hotEnd] += millimetres;
    rename(coordinate + millimetres);
    hasFed |= millimetres != 0;
  }

  /** Gives the present place another coordinate; nothing is fed. */
  void rename(double millimetres) {
    coordinate = millimetres;
    coordinateIsKnown = true;
  }

  /**
   * Takes the coordinate that the printer reports; the total of the first hot end reported is the
   * coordinate itself. One that is lower when another hot end takes over was renamed meanwhile, and
   * counts from there.
   */
  void report(int hotEnd, double millimetres) {
    if (!coordinateIsKnown) {
      totals[hotEnd] = millimetres;
    } else if (hotEnd == lastReported || millimetres > coordinate) {
      totals[hotEnd] += millimetres - coordinate;
    }
    lastReported = hotEnd;
    told[hotEnd] = true;
    rename(millimetres);
  }

  /** Retracts without moving the coordinate, unless that is done already. */
  void retract(int hotEnd, double length) {
    if (retracted[hotEnd] == 0) {
      totals[hotEnd] -= length;
      retracted[hotEnd] = length;
    }
  }

  /** Takes back what {@link #retract} did. */
  void recover(int hotEnd) {
    totals[hotEnd] += retracted[hotEnd];
    retracted[hotEnd] = 0;
  }

  /** The coordinate begins anew; the totals go on. */
  void restart() {
    Arrays.fill(retracted, 0);
    rename(0);
  }
}
