package meltkeeper.jam;

/**
 * One supposition: the feed stopped in a certain window, when a share of that window's filament was
 * through, and the level went on from where it stood then. What was fed before is still answered.
 * Mutable.
 */
final class Stop {

  private final DutyLevel level = new DutyLevel();
  private final double[] feeds = new double[FeedAnswer.WINDOWS];
  private double sum;
  private int windows;

  /** One that is yet to be read from a memory. */
  Stop() {}

  /**
   * Supposes a stop in the newest window.
   *
   * @param healthy the level before that window
   * @param asked feeds of that window and those before, mm/s, newest first
   * @param through share of the newest that was fed before the stop, 0 to 1
   */
  Stop(DutyLevel healthy, double[] asked, double through) {
    level.follow(healthy);
    System.arraycopy(asked, 0, feeds, 0, feeds.length);
    feeds[0] *= through;
  }

  /** Feeds of the newest window and those before as they are supposed, mm/s. */
  double[] feeds() {
    return feeds;
  }

  /** What the duty amounts to beside those feeds. */
  DutyLevel level() {
    return level;
  }

  /** Adds what the newest window says of it, up to a most, and is ready for the next. */
  void add(double ratio, double most) {
    sum = Math.min(most, sum + ratio);
    windows++;
    System.arraycopy(feeds, 0, feeds, 1, feeds.length - 1);
    feeds[0] = 0;
  }

  /** Sum of the log-likelihood ratios against health since then. */
  double sum() {
    return sum;
  }

  /** How many windows it has been supposed for. */
  int windows() {
    return windows;
  }

  void keep(Memory memory) {
    level.keep(memory.within("level"));
    memory.numbers("feed", feeds);
    sum = memory.number("sum", sum);
    windows = (int) memory.count("windows", windows);
  }
}
