package meltkeeper.desk;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.List;

/**
 * What a stretch of time brought and cost.
 *
 * @param until exclusive
 * @param zone in which it is shown
 * @param currency of all costs
 * @param hotEnds by printer and index, those without any facts too
 * @param costs of all hot ends
 * @param notes on what the figures leave out
 */
public record Report(
    Instant since,
    Instant until,
    String zone,
    String currency,
    List<OfHotEnd> hotEnds,
    Costs costs,
    List<String> notes) {

  public Report {
    hotEnds = List.copyOf(hotEnds);
    notes = List.copyOf(notes);
  }

  /**
   * One hot end's share.
   *
   * @param hotHours to the thousandth
   * @param printingHours to the thousandth
   * @param filamentMetres measured where an encoder measures it, else as commanded
   * @param total the same facts, whole
   * @param swaps parts that came off, in order of time
   * @param jams among them because of a jam, whoever's fault
   */
  public record OfHotEnd(
      String printer,
      int hotEnd,
      BigDecimal hotHours,
      BigDecimal printingHours,
      BigDecimal filamentMetres,
      @JsonUnwrapped TallyAnswer total,
      List<Swap> swaps,
      int jams,
      Costs costs) {

    public OfHotEnd {
      swaps = List.copyOf(swaps);
    }

    /** {@code heron}, or {@code heron/1} for a second hot end. */
    public String name() {
      return hotEnd == 0 ? printer : printer + "/" + hotEnd;
    }
  }

  /**
   * A part that came off.
   *
   * @param because jam, worn, precaution, inspection, or retired
   * @param notThisPart true when the trouble came from elsewhere
   * @param hotHours that the part had run by then, over its life
   */
  public record Swap(
      Instant at,
      String part,
      String kind,
      String because,
      boolean notThisPart,
      BigDecimal hotHours,
      Costs costs) {}

  /**
   * Money, to the hundredth.
   *
   * @param parts prices of parts that were used up
   * @param labour of swaps
   * @param jams what jams cost beside part and swap
   * @param total of the three
   */
  public record Costs(BigDecimal parts, BigDecimal labour, BigDecimal jams, BigDecimal total) {

    /** Nothing. */
    public static final Costs NONE = of(0, 0, 0);

    static Costs of(double parts, double labour, double jams) {
      BigDecimal forParts = money(parts);
      BigDecimal forLabour = money(labour);
      BigDecimal forJams = money(jams);
      return new Costs(forParts, forLabour, forJams, forParts.add(forLabour).add(forJams));
    }

    Costs plus(Costs more) {
      return new Costs(
          parts.add(more.parts),
          labour.add(more.labour),
          jams.add(more.jams),
          total.add(more.total));
    }

    private static BigDecimal money(double amount) {
      return BigDecimal.valueOf(amount).setScale(2, RoundingMode.HALF_UP);
    }
  }
}
