package meltkeeper.pipeline;

import java.util.Locale;
import meltkeeper.jam.Cause;
import meltkeeper.jam.Finding;

/** A finding of the jam watch as a person is told it. */
final class JamWords {

  private JamWords() {}

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
