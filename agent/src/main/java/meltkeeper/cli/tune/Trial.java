package meltkeeper.cli.tune;

import java.util.HashMap;
import java.util.Map;
import meltkeeper.jam.Finding;
import meltkeeper.jam.score.Alarms;
import meltkeeper.protocol.HotEnd;

/** The alarms of one limit on all recordings. Mutable. */
public final class Trial {

  private final double wantedHours;
  private final Map<HotEnd, Alarms> alarms = new HashMap<>();

  /** A trial of that many printing hours wanted between two false alarms. */
  public Trial(double wantedHours) {
    this.wantedHours = wantedHours;
  }

  /** Takes what the watch found. */
  public void found(Finding finding) {
    of(finding.hotEnd()).at(finding.atNanos() / 1e9, finding.level().isJam());
  }

  double wantedHours() {
    return wantedHours;
  }

  Map<HotEnd, Alarms> alarms() {
    return alarms;
  }

  Alarms of(HotEnd hotEnd) {
    return alarms.computeIfAbsent(hotEnd, h -> new Alarms());
  }
}
