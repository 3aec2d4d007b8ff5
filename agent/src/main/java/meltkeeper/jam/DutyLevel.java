package meltkeeper.jam;

/**
 * What a duty amounts to beside its feed: a level that wanders and sometimes jumps, as fans,
 * draughts and the mains make it. It follows what is left of the duty once a supposed share of the
 * feed's need is taken off, and tells how likely each window is under that supposition.
 *
 * <p>A local level model; a jump is a second component of the prediction, weighed by its likelihood
 * and collapsed into one normal afterwards. Mutable.
 */
final class DutyLevel {

  /** A fan or a draught comes or goes in such a share of windows, until more is known. */
  private static final double USUAL_JUMP_CHANCE = 0.02;

  private static final double LEAST_JUMP_CHANCE = 0.004;
  private static final double MOST_JUMP_CHANCE = 0.08;
  private static final double MEMORY_WINDOWS = 1000;

  /** Such a jump's spread as a share of full duty: 1 to 4 W of 40 W, common practice, no source. */
  private static final double JUMP_SPREAD = 0.06;

  private static final double WANDER = 0.15;
  private static final double UNKNOWN_VARIANCE = 0.04;

  private double level;
  private double variance = UNKNOWN_VARIANCE;
  private boolean known;
  private double jumpChance = USUAL_JUMP_CHANCE;
  private double lastJump;

  /**
   * Takes the rest of one window's duty, and tells the logarithm of its likelihood; 0 where nothing
   * is known yet.
   *
   * @param noise variance of a window's duty
   * @param extra variance of the feed's supposed need
   * @param jumpChance share of windows in which the level jumps
   */
  double take(double rest, double noise, double extra, double jumpChance) {
    if (!known) {
      known = true;
      level = rest;
      variance = noise + extra;
      return 0;
    }
    double total = variance + noise + extra;
    double error = rest - level;
    double calm = (1 - jumpChance) * density(error, total);
    double wide = total + JUMP_SPREAD * JUMP_SPREAD;
    double jump = jumpChance * density(error, wide);
    double weight = jump / (calm + jump);
    double calmGain = variance / total;
    double jumpGain = (variance + JUMP_SPREAD * JUMP_SPREAD) / wide;
    double calmMove = calmGain * error;
    double jumpMove = jumpGain * error;
    double move = (1 - weight) * calmMove + weight * jumpMove;
    double between = (1 - weight) * weight * (calmMove - jumpMove) * (calmMove - jumpMove);
    double calmLeft = variance * (1 - calmGain);
    double jumpLeft = (variance + JUMP_SPREAD * JUMP_SPREAD) * (1 - jumpGain);
    level += move;
    variance = (1 - weight) * calmLeft + weight * jumpLeft + between + WANDER * WANDER * noise;
    lastJump = weight;
    return Math.log(calm + jump);
  }

  private static double density(double error, double variance) {
    return Math.exp(-error * error / (2 * variance)) / Math.sqrt(2 * Math.PI * variance);
  }

  /** Error that the rest would have, in standard deviations; 0 where nothing is known yet. */
  double standardised(double rest, double noise, double extra) {
    return known ? (rest - level) / Math.sqrt(variance + noise + extra) : 0;
  }

  /** Share of windows in which the level is seen to jump. */
  double jumpChance() {
    return jumpChance;
  }

  /** Learns from the newest window how often the level jumps. */
  void learnJumps() {
    jumpChance += (lastJump - jumpChance) / MEMORY_WINDOWS;
    jumpChance = Math.max(LEAST_JUMP_CHANCE, Math.min(MOST_JUMP_CHANCE, jumpChance));
  }

  /** Goes on from where another stands. */
  void follow(DutyLevel other) {
    level = other.level;
    variance = other.variance;
    known = other.known;
  }

  void rearm() {
    known = false;
    variance = UNKNOWN_VARIANCE;
  }

  void keep(Memory memory) {
    level = memory.number("level", level);
    variance = memory.number("variance", variance);
    known = memory.flag("known", known);
    jumpChance = memory.number("jumpChance", jumpChance);
    lastJump = memory.number("lastJump", lastJump);
  }
}
