package meltkeeper.part;

import java.util.Optional;
import java.util.OptionalLong;
import meltkeeper.protocol.HotEnd;

/**
 * A stretch of time that a part spent on a hot end.
 *
 * @param fromNanos when it was fitted
 * @param untilNanos when it was taken off; empty while it is fitted
 * @param past what it had run elsewhere before
 */
public record Fitting(
    HotEnd hotEnd, long fromNanos, OptionalLong untilNanos, Optional<PriorPast> past) {

  /** True when the part is still there. */
  public boolean isOpen() {
    return untilNanos.isEmpty();
  }

  /** True when that instant is within: the beginning is, the end is not. */
  public boolean holds(long nanos) {
    return fromNanos <= nanos && nanos < until();
  }

  /** True when both share some time. */
  public boolean overlaps(Fitting other) {
    return fromNanos < other.until() && other.fromNanos < until();
  }

  /** Its end, the end of time while it is open. */
  public long until() {
    return untilNanos.orElse(Long.MAX_VALUE);
  }
}
