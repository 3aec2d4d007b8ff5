package meltkeeper.jam;

/**
 * How far log-likelihood ratios of a jam against health can be trusted on this printer.
 *
 * <p>Of true ratios {@code E exp(ratio) = 1} in health, so that their sum from any window on passes
 * a limit with a chance of at most exp(-limit) (Wald 1947, from memory). A model is never true:
 * here the mean of {@code exp(trust . ratio)} over blocks of windows is learned in health for some
 * grades of trust, and the highest whose mean stays safely below 1 is taken. Blocks take care of
 * correlation. Where the ratios mean nothing, no grade will do. A block waits until nothing speaks
 * of a jam any more before it counts as health: a jam teaches no distrust. Mutable.
 */
final class Trust {

  private static final int BLOCK = 12;
  private static final double[] GRADES = {1, 0.8, 0.6, 0.45, 0.3, 0.2, 0.1};
  private static final double PRIOR_BLOCKS = 3;

  /** Little trust at first: each grade's mean until blocks of health bring it down. */
  private static final double[] PRIOR_MEANS = {4, 3, 2, 1.4, 0.7, 0.6, 0.5};

  private static final double MOST_MEAN = 0.5;
  private static final double MEMORY_BLOCKS = 150;
  private static final double DRIFT_MEMORY_BLOCKS = 20;

  private double blockSum;
  private int inBlock;
  private final double[] blocksWaiting = new double[20];
  private int waiting;
  private double blocks = PRIOR_BLOCKS;
  private final double[] means = PRIOR_MEANS.clone();
  private double drift;

  /**
   * Takes the next window's ratio.
   *
   * @param healthy true when nothing speaks of a jam
   */
  void take(double ratio, boolean healthy) {
    blockSum += ratio;
    inBlock++;
    if (inBlock == BLOCK) {
      if (waiting < blocksWaiting.length) {
        blocksWaiting[waiting] = blockSum;
        waiting++;
      }
      inBlock = 0;
      blockSum = 0;
    }
    if (healthy) {
      learn();
    }
  }

  private void learn() {
    for (int block = 0; block < waiting; block++) {
      blocks = Math.min(blocks + 1, MEMORY_BLOCKS);
      double slope = blocksWaiting[block] / BLOCK;
      drift += (slope - drift) / Math.min(blocks, DRIFT_MEMORY_BLOCKS);
      for (int i = 0; i < GRADES.length; i++) {
        means[i] += (Math.exp(GRADES[i] * blocksWaiting[block]) - means[i]) / blocks;
      }
    }
    waiting = 0;
  }

  /** The share of a ratio that counts, 0 to 1. */
  double share() {
    for (int i = 0; i < GRADES.length; i++) {
      if (means[i] <= MOST_MEAN) {
        return GRADES[i];
      }
    }
    return 0;
  }

  /** What speaks for health in a healthy window, on average of late. */
  double healthPerWindow() {
    return -drift;
  }

  void rearm() {
    inBlock = 0;
    blockSum = 0;
    waiting = 0;
  }

  void keep(Memory memory) {
    blockSum = memory.number("blockSum", blockSum);
    inBlock = (int) memory.count("inBlock", inBlock);
    blocks = memory.number("blocks", blocks);
    drift = memory.number("drift", drift);
    memory.numbers("mean", means);
    memory.numbers("waitingBlock", blocksWaiting);
    waiting = (int) memory.count("waiting", waiting);
  }
}
