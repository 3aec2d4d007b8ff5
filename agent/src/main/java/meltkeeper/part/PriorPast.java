package meltkeeper.part;

/**
 * Hours that a part had run before the ledger knew it.
 *
 * @param hours hot hours, the mean of what is believed, 0 or more
 * @param spreadHours standard deviation of that belief, 0 when it is known
 * @param celsius the temperature that they were run at, -50 to 600
 */
public record PriorPast(double hours, double spreadHours, double celsius) {

  public PriorPast {
    if (!(hours >= 0 && hours < 1e6)) {
      throw new IllegalArgumentException("prior hours are 0 to a million, not " + hours);
    }
    if (!(spreadHours >= 0 && spreadHours < 1e6)) {
      throw new IllegalArgumentException(
          "the spread of prior hours is 0 to a million, not " + spreadHours);
    }
    if (!(celsius >= -50 && celsius <= 600)) {
      throw new IllegalArgumentException(
          "the temperature of prior hours is -50 to 600 degrees Celsius, not " + celsius);
    }
  }
}
