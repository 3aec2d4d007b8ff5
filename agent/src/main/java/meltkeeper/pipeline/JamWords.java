package meltkeeper.pipeline;

import java.time.Duration;
import java.util.Locale;
import meltkeeper.jam.Cause;
import meltkeeper.jam.Finding;

/** A finding of the jam watch as a person is told it. */
final class JamWords {

  private JamWords() {}

  /** What is told besides when a jam action follows. */
  static String actsAfter(Duration delay) {
    String time = delay.toSeconds() < 120 ? delay.toSeconds() + " s" : delay.toMinutes() + " min";
    return ". The jam action follows in " + time + ", unless you acknowledge this";
  }

  static String text(Finding finding) {
    String minutes =
        finding
            .minutesToStall()
            .map(
                m ->
                    String.format(
                        Locale.ROOT, "; it may stall in %.0f to %.0f min", m.low(), m.high()))
            .orElse("");
    String cause = finding.cause().map(Cause::suggestion).map(words -> "; " + words).orElse("");
    return finding.hotEnd()
        + " is "
        + finding.level().word()
        + ": "
        + finding.because()
        + minutes
        + cause;
  }
}
