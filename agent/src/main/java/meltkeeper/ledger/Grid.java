package meltkeeper.ledger;

import java.util.Collection;
import java.util.Collections;
import java.util.NavigableSet;
import java.util.TreeSet;

/**
 * The lattice of bucket edges of one hot end: every five minutes since 1970, and each time at which
 * a part was fitted or taken off.
 *
 * @param cuts the extra edges, nanoseconds since 1970
 */
public record Grid(NavigableSet<Long> cuts) {

  /** Five minutes and nothing else. */
  public static final Grid PLAIN = new Grid(new TreeSet<>());

  public Grid {
    cuts = Collections.unmodifiableNavigableSet(new TreeSet<>(cuts));
  }

  /** A grid with these extra edges. */
  public static Grid with(Collection<Long> cuts) {
    return new Grid(new TreeSet<>(cuts));
  }

  /** The last edge at or before {@code nanos}. */
  long edgeAtOrBefore(long nanos) {
    long lattice = Math.floorDiv(nanos, Bucket.LENGTH_NANOS) * Bucket.LENGTH_NANOS;
    Long cut = cuts.isEmpty() ? null : cuts.floor(nanos);
    return cut == null ? lattice : Math.max(lattice, cut);
  }

  /** The last edge before {@code nanos}. */
  public long edgeBefore(long nanos) {
    return edgeAtOrBefore(nanos - 1);
  }

  /** The first edge after {@code nanos}. */
  long edgeAfter(long nanos) {
    long lattice = (Math.floorDiv(nanos, Bucket.LENGTH_NANOS) + 1) * Bucket.LENGTH_NANOS;
    Long cut = cuts.isEmpty() ? null : cuts.higher(nanos);
    return cut == null ? lattice : Math.min(lattice, cut);
  }
}
