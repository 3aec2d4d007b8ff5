package meltkeeper.store.sql;

import java.sql.SQLDataException;
import java.util.Optional;
import meltkeeper.part.Because;
import meltkeeper.part.PartEvent;
import meltkeeper.part.PriorPast;
import meltkeeper.protocol.HotEnd;

/** What happened to a part, laid out as a row of {@code part_event}. */
record EventRow(
    long atNanos,
    String what,
    Optional<HotEnd> hotEnd,
    Optional<PriorPast> past,
    Optional<Because> because,
    Optional<Boolean> excused,
    Optional<Double> restores) {

  private static final String FITTED = "fitted";
  private static final String REMOVED = "removed";
  private static final String CLEANED = "cleaned";
  private static final String RETIRED = "retired";

  static EventRow of(PartEvent event) {
    if (event instanceof PartEvent.Fitted fitted) {
      return new EventRow(
          fitted.atNanos(),
          FITTED,
          Optional.of(fitted.hotEnd()),
          fitted.past(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty());
    }
    if (event instanceof PartEvent.Removed removed) {
      return new EventRow(
          removed.atNanos(),
          REMOVED,
          Optional.empty(),
          Optional.empty(),
          Optional.of(removed.because()),
          Optional.of(removed.excused()),
          Optional.empty());
    }
    if (event instanceof PartEvent.Cleaned cleaned) {
      return bare(cleaned.atNanos(), CLEANED, Optional.of(cleaned.restores()));
    }
    if (event instanceof PartEvent.Retired retired) {
      return bare(retired.atNanos(), RETIRED, Optional.empty());
    }
    throw new IllegalArgumentException("the store knows no event such as " + event);
  }

  private static EventRow bare(long atNanos, String what, Optional<Double> restores) {
    return new EventRow(
        atNanos,
        what,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        restores);
  }

  PartEvent event() throws SQLDataException {
    return switch (what) {
      case FITTED -> new PartEvent.Fitted(atNanos, present("hot_end", hotEnd), past);
      case REMOVED ->
          new PartEvent.Removed(atNanos, present("because", because), present("excused", excused));
      case CLEANED -> new PartEvent.Cleaned(atNanos, present("restores", restores));
      case RETIRED -> new PartEvent.Retired(atNanos);
      default -> throw new SQLDataException("an event of a part is of an unknown sort: " + what);
    };
  }

  private <T> T present(String column, Optional<T> value) throws SQLDataException {
    return value.orElseThrow(
        () -> new SQLDataException("an event of a part, " + what + ", lacks its " + column));
  }
}
