package meltkeeper.life;

/**
 * What a cleaning costs and is believed to do.
 *
 * @param money labour and whatever else for one cleaning, 0 or more
 * @param restores share of its age that it is believed to undo, 0 to 1
 */
public record CleaningCosts(double money, double restores) {

  public CleaningCosts {
    if (!(money >= 0) || Double.isInfinite(money)) {
      throw new IllegalArgumentException("a cleaning costs 0 or more, not " + money);
    }
    if (!(restores >= 0 && restores <= 1)) {
      throw new IllegalArgumentException("a cleaning restores 0 to 1, not " + restores);
    }
  }
}
