package meltkeeper.desk;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import meltkeeper.ledger.Tally;
import meltkeeper.part.Exposure;
import meltkeeper.part.Fitting;
import meltkeeper.part.Moments;
import meltkeeper.part.Part;

/**
 * A part as a list shows it.
 *
 * @param ending how its life stands: {@code still-fitted}, {@code on-shelf}, {@code jam} ...
 * @param fitted where it is now; empty when it is on no hot end
 * @param hotHours above the hot threshold over its whole life, to the thousandth
 * @param mostIn the band in which it spent most; empty for no hot time
 * @param earlierHours those among the hot hours that were told, not observed
 * @param filamentMetres fed through it, measured where an encoder measures it, else as commanded
 * @param total the same facts, whole
 */
public record PartLine(
    String id,
    String kind,
    Optional<String> variant,
    String ending,
    Optional<Place> fitted,
    BigDecimal hotHours,
    Optional<String> mostIn,
    BigDecimal earlierHours,
    BigDecimal filamentMetres,
    @JsonUnwrapped TallyAnswer total) {

  /** Where a part is, and since when. */
  public record Place(String printer, int hotEnd, Instant since) {}

  static PartLine of(Part part, Tally total) {
    return new PartLine(
        part.id(),
        part.kind(),
        part.variant(),
        part.ending().word(),
        part.fittings().stream().filter(Fitting::isOpen).findFirst().map(PartLine::place),
        hours(total.exposure().hotNanos()),
        mostIn(total.exposure()),
        hours(PartHeats.told(part).hotNanos()),
        metres(total),
        TallyAnswer.of(total));
  }

  private static Place place(Fitting stay) {
    return new Place(
        stay.hotEnd().printer(), stay.hotEnd().index(), Moments.instant(stay.fromNanos()));
  }

  private static Optional<String> mostIn(Exposure exposure) {
    return exposure.bands().entrySet().stream()
        .max(Comparator.comparingLong(entry -> entry.getValue().nanos()))
        .map(Map.Entry::getKey)
        .map(Exposure::bandName);
  }

  /** Hours to the thousandth. */
  static BigDecimal hours(long nanos) {
    return BigDecimal.valueOf(nanos)
        .divide(BigDecimal.valueOf(3_600_000_000_000L), 3, RoundingMode.HALF_UP);
  }

  /** Filament fed, to the thousandth: as measured, or as commanded where nothing measures it. */
  static BigDecimal metres(Tally tally) {
    long micrometres =
        tally.measuredMicrometres() > 0
            ? tally.measuredMicrometres()
            : tally.commandedMicrometres();
    return BigDecimal.valueOf(micrometres, 6).setScale(3, RoundingMode.HALF_UP);
  }
}
