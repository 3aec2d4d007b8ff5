package meltkeeper.pipeline;

import java.util.Optional;
import meltkeeper.jam.Finding;
import meltkeeper.jam.Outlook;
import meltkeeper.jam.Watch;
import meltkeeper.jam.WatchState;
import meltkeeper.protocol.Reading;

/**
 * One hot end's jam watch, and when what it remembers is to be kept: after a finding, and else
 * every ten minutes of its readings, for a watch that goes on from a few minutes ago loses nothing
 * but those, and a cheap card wears less. For one thread.
 */
final class Watching {

  private static final long KEEP_EVERY_NANOS = 600_000_000_000L;

  private final Watch watch;
  private long keptNanos = Long.MIN_VALUE;
  private long latestNanos = Long.MIN_VALUE;
  private boolean found;

  Watching(Watch watch) {
    this.watch = watch;
  }

  Optional<Finding> take(Reading reading) {
    long at = reading.sample().atNanos();
    latestNanos = at;
    if (keptNanos == Long.MIN_VALUE) {
      keptNanos = at;
    }
    Optional<Finding> finding = watch.step(reading);
    found |= finding.isPresent();
    return finding;
  }

  boolean isDue() {
    return found || Math.abs(latestNanos - keptNanos) >= KEEP_EVERY_NANOS;
  }

  WatchState state() {
    return watch.state();
  }

  void kept() {
    keptNanos = latestNanos;
    found = false;
  }

  /** A part was fitted or taken off at that time. */
  void partSwapped(long atNanos) {
    watch.partSwapped(atNanos);
  }

  Outlook outlook() {
    return watch.outlook();
  }

  long blindNanos() {
    return watch.blindNanos();
  }
}
