package meltkeeper.part;

/**
 * What a shop pays.
 *
 * @param currency its name, for showing
 * @param labourPerHour of work, 0 or more
 * @param jam what one jam costs beside the part and the swap, 0 or more
 */
public record Costs(String currency, double labourPerHour, double jam) {

  public Costs {
    if (!(labourPerHour >= 0) || !(jam >= 0)) {
      throw new IllegalArgumentException(
          "costs are 0 or more, not " + labourPerHour + " and " + jam);
    }
  }
}
