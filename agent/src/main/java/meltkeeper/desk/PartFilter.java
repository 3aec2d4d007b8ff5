package meltkeeper.desk;

import java.util.Optional;

/**
 * Which parts are asked for.
 *
 * @param printer those on it now
 * @param retiredToo also those thrown away or ended on paper
 */
public record PartFilter(Optional<String> kind, Optional<String> printer, boolean retiredToo) {

  /** All that are in use or could be. */
  public static final PartFilter IN_USE = new PartFilter(Optional.empty(), Optional.empty(), false);

  /** Every part that was ever known. */
  public static final PartFilter ALL = new PartFilter(Optional.empty(), Optional.empty(), true);
}
