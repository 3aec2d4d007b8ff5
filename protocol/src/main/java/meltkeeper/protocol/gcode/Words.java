package meltkeeper.protocol.gcode;

import java.util.Locale;
import java.util.Optional;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.NoticeKind;

/** What a printer's free words are about, by the words that occur (common practice, no source). */
final class Words {

  private Words() {}

  static NoticeKind kindOf(String text) {
    String lower = text.toLowerCase(Locale.ROOT).replace('_', ' ');
    if (lower.contains("runout") || lower.contains("out of filament")) {
      return NoticeKind.RUNOUT;
    }
    if (lower.contains("heat") || lower.contains("temp") || lower.contains("therm")) {
      return NoticeKind.HEATER_FAULT;
    }
    if (lower.startsWith("pause")) {
      return NoticeKind.PAUSED;
    }
    if (lower.startsWith("resume")) {
      return NoticeKind.RESUMED;
    }
    return lower.contains("filament") ? NoticeKind.FILAMENT_CHANGE : NoticeKind.OTHER;
  }

  /** The same for what a printer asks of its host: talk of heating up is no fault there. */
  static NoticeKind kindOfAction(String words) {
    NoticeKind kind = kindOf(words);
    return kind == NoticeKind.HEATER_FAULT ? NoticeKind.OTHER : kind;
  }

  /** The state of the job after an action that asks for another one. */
  static Optional<JobState> jobStateOf(String action) {
    String lower = action.toLowerCase(Locale.ROOT);
    if (lower.startsWith("pause")) {
      return Optional.of(JobState.PAUSED);
    }
    if (lower.startsWith("resume")) {
      return Optional.of(JobState.PRINTING);
    }
    return lower.startsWith("cancel") ? Optional.of(JobState.IDLE) : Optional.empty();
  }
}
