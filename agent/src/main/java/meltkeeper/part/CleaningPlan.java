package meltkeeper.part;

/**
 * What cleaning a part of a kind takes and is believed to do.
 *
 * @param minutes of labour, 0 or more
 * @param money for whatever is used up, in the shop's currency, 0 or more
 * @param restores share of its age that it is believed to undo, 0 to 1
 */
public record CleaningPlan(double minutes, double money, double restores) {

  public CleaningPlan {
    if (!(minutes >= 0) || !(money >= 0)) {
      throw new IllegalArgumentException(
          "a cleaning takes 0 or more of time and money, not " + minutes + " and " + money);
    }
    if (!(restores >= 0 && restores <= 1)) {
      throw new IllegalArgumentException("a cleaning restores 0 to 1, not " + restores);
    }
  }
}
