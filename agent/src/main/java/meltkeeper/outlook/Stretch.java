package meltkeeper.outlook;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import meltkeeper.part.Exposure;
import meltkeeper.protocol.Fault;

/**
 * Hours at one temperature, as a shop tells them of a batch.
 *
 * @param hours above 0, to 10000
 * @param celsius of the hot end, 0 to 600
 */
public record Stretch(double hours, double celsius) {

  private static final double MOST_HOURS = 10_000;

  /** What is wrong with it. */
  public List<Fault> faults() {
    List<Fault> faults = new ArrayList<>();
    if (!(hours > 0 && hours <= MOST_HOURS)) {
      faults.add(Fault.of("hours", hours, "above 0, to 10000 h"));
    }
    if (!(celsius >= 0 && celsius <= 600)) {
      faults.add(Fault.of("temperature", celsius, "0 to 600 °C"));
    }
    return faults;
  }

  /**
   * The batch that it makes on a hot end.
   *
   * @param hotAboveCelsius the hot end's threshold; hours below it age nothing
   */
  public Batch on(int hotEnd, double hotAboveCelsius) {
    boolean hot = celsius > hotAboveCelsius;
    return new Batch(
        hot ? Map.of(hotEnd, Exposure.of(celsius, hours)) : Map.of(),
        hours,
        celsius,
        hot
            ? List.of()
            : List.of(
                "hours at "
                    + celsius
                    + " °C do not count: hot is above "
                    + hotAboveCelsius
                    + " °C"));
  }
}
