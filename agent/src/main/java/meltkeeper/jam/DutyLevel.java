package meltkeeper.jam;

import java.util.Arrays;

/**
 * What a duty amounts to beside its feed: a level that wanders and sometimes jumps, as fans,
 * draughts and the mains make it. It follows what is left of the duty once a supposed need is taken
 * off, and tells how likely each window is under that supposition.
 *
 * <p>A draught takes heat from the block as cold filament does, so the duty answers it with the
 * same delay: the state is the level now and in the windows before, seen through the answer's
 * kernel (Kalman 1960). A jump is a second component of the prediction, weighed by its likelihood
 * and collapsed into one normal afterwards. Mutable.
 */
final class DutyLevel {

  private static final int SIZE = FeedAnswer.WINDOWS;

  /** Such a jump's spread as a share of full duty: 1 to 4 W of 40 W, common practice, no source. */
  private static final double JUMP_VARIANCE = 0.06 * 0.06;

  private static final double UNKNOWN_VARIANCE = 0.04;

  /** A fan or a draught comes or goes in one of a hundred windows, until more is known. */
  private static final double PRIOR_JUMPS = 2;

  private static final double PRIOR_WINDOWS = 200;
  private static final double MEMORY_WINDOWS = 2000;
  private static final double LEAST_JUMP_CHANCE = 0.003;
  private static final double MOST_JUMP_CHANCE = 0.08;

  private final double[] levels = new double[SIZE];
  private final double[] covariance = new double[SIZE * SIZE];
  private boolean known;
  private double jumps = PRIOR_JUMPS;
  private double windows = PRIOR_WINDOWS;
  private double jumpWeight;
  private double error;

  /**
   * Takes the rest of one window's duty, and tells the logarithm of its likelihood; 0 where nothing
   * is known yet.
   *
   * @param kernel shares of an answer that show in this window and the next ones
   * @param noise variance of a window's duty, with that of the need
   * @param wander variance by which the level moves
   * @param jumpChance share of windows in which the level jumps
   */
  double take(double rest, double[] kernel, double noise, double wander, double jumpChance) {
    if (!known) {
      known = true;
      Arrays.fill(levels, rest);
      Arrays.fill(covariance, UNKNOWN_VARIANCE);
      look(rest, kernel, noise, 0);
      return 0;
    }
    for (int i = SIZE - 1; i >= 0; i--) {
      levels[i] = levels[Math.max(0, i - 1)];
      for (int j = SIZE - 1; j >= 0; j--) {
        covariance[i * SIZE + j] = covariance[Math.max(0, i - 1) * SIZE + Math.max(0, j - 1)];
      }
    }
    covariance[0] += wander;
    return look(rest, kernel, noise, jumpChance);
  }

  private double look(double rest, double[] kernel, double noise, double jumpChance) {
    double[] calmGain = new double[SIZE];
    double missed = rest;
    double total = noise;
    for (int i = 0; i < SIZE; i++) {
      missed -= kernel[i] * levels[i];
      for (int j = 0; j < SIZE; j++) {
        calmGain[i] += covariance[i * SIZE + j] * kernel[j];
      }
      total += kernel[i] * calmGain[i];
    }
    double[] jumpGain = calmGain.clone();
    jumpGain[0] += JUMP_VARIANCE * kernel[0];
    double wide = total + kernel[0] * kernel[0] * JUMP_VARIANCE;
    double calm = (1 - jumpChance) * density(missed, total);
    double jump = jumpChance * density(missed, wide);
    double weight = jump / (calm + jump);
    double[] between = new double[SIZE];
    for (int i = 0; i < SIZE; i++) {
      between[i] = (jumpGain[i] / wide - calmGain[i] / total) * missed;
    }
    for (int i = 0; i < SIZE; i++) {
      for (int j = 0; j < SIZE; j++) {
        double before = covariance[i * SIZE + j];
        double jumped = before + (i + j == 0 ? JUMP_VARIANCE : 0);
        covariance[i * SIZE + j] =
            (1 - weight) * (before - calmGain[i] * calmGain[j] / total)
                + weight * (jumped - jumpGain[i] * jumpGain[j] / wide)
                + weight * (1 - weight) * between[i] * between[j];
      }
    }
    for (int i = 0; i < SIZE; i++) {
      levels[i] += calmGain[i] / total * missed + weight * between[i];
    }
    jumpWeight = weight;
    error = missed / Math.sqrt(total);
    return Math.log(calm + jump);
  }

  private static double density(double error, double variance) {
    return Math.exp(-error * error / (2 * variance)) / Math.sqrt(2 * Math.PI * variance);
  }

  boolean isKnown() {
    return known;
  }

  /** Error of the newest window's prediction in standard deviations. */
  double error() {
    return error;
  }

  /** Variance that the newest window's jump had, by how likely there was one. */
  double jumpVariance() {
    return jumpWeight * JUMP_VARIANCE;
  }

  /** Share of windows in which the level is seen to jump. */
  double jumpChance() {
    return Math.max(LEAST_JUMP_CHANCE, Math.min(MOST_JUMP_CHANCE, jumps / windows));
  }

  /** Learns from the newest window how often the level jumps. */
  void learnJumps() {
    jumps += jumpWeight;
    windows++;
    if (windows > MEMORY_WINDOWS) {
      jumps /= 2;
      windows /= 2;
    }
  }

  /** Goes on from where another stands. */
  void follow(DutyLevel other) {
    System.arraycopy(other.levels, 0, levels, 0, SIZE);
    System.arraycopy(other.covariance, 0, covariance, 0, SIZE * SIZE);
    known = other.known;
  }

  void rearm() {
    known = false;
  }

  void keep(Memory memory) {
    memory.numbers("level", levels);
    memory.numbers("covariance", covariance);
    known = memory.flag("known", known);
    jumps = memory.number("jumps", jumps);
    windows = memory.number("windows", windows);
    jumpWeight = memory.number("jumpWeight", jumpWeight);
  }
}
