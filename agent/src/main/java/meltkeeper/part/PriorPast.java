package meltkeeper.part;

import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import meltkeeper.protocol.Fault;

/**
 * Hours that a part had run before the ledger knew it.
 *
 * @param hours hot hours, the mean of what is believed, 0 or more
 * @param spreadHours standard deviation of that belief, 0 when it is known
 * @param celsius the temperature that they were run at, -50 to 600
 */
public record PriorPast(double hours, double spreadHours, double celsius) {

  private static final double MOST_HOURS = 100_000;

  public PriorPast {
    List<Fault> faults = faults(hours, spreadHours, celsius);
    if (!faults.isEmpty()) {
      throw new IllegalArgumentException(faults.toString());
    }
  }

  /** Every fault of such a past. */
  public static List<Fault> faults(double hours, double spreadHours, double celsius) {
    List<Fault> faults = new ArrayList<>();
    if (!(hours >= 0 && hours <= MOST_HOURS)) {
      faults.add(Fault.of("prior-hours", hours, "0 to 100000 hot hours"));
    }
    if (!(spreadHours >= 0 && spreadHours <= MOST_HOURS)) {
      faults.add(
          Fault.of(
              "prior-spread",
              spreadHours,
              "0 to 100000 hours",
              "give about how far off the prior hours may be, 0 when they are known"));
    }
    if (!(celsius >= -50 && celsius <= 600)) {
      faults.add(Fault.of("prior-temperature", celsius, "-50 to 600 °C"));
    }
    return faults;
  }

  /** Its hours at its temperature. */
  public Exposure exposure() {
    return hours == 0 ? Exposure.NONE : Exposure.of(celsius, hours);
  }

  /** {@code after 120 ± 60 h at 220 °C elsewhere}. */
  public String words() {
    DecimalFormat plain = new DecimalFormat("0.###", DecimalFormatSymbols.getInstance(Locale.ROOT));
    return "after "
        + plain.format(hours)
        + " ± "
        + plain.format(spreadHours)
        + " h at "
        + plain.format(celsius)
        + " °C elsewhere";
  }
}
