package meltkeeper.demo;

import java.util.List;
import java.util.Locale;
import meltkeeper.protocol.JobState;

/**
 * What a printer that prints from its own storage answers, in the RepRap dialect (common practice,
 * no source). Not for use by several threads at once.
 */
final class GcodeVoice {

  private static final int DUTY_STEPS = 127;
  private static final long JOB_BYTES = 2_000_000;
  private static final long NANOS_PER_SECOND = 1_000_000_000;

  private long reportEveryNanos;
  private long reportedNanos;

  /** The lines that answer one line, without their ends. */
  List<String> answers(String line, PrinterState state) {
    String command = line.strip();
    String code = command.split(" ", 2)[0];
    return switch (code) {
      case "" -> List.of();
      case "M105" -> List.of("ok " + temperatures(state));
      case "M27" -> List.of(storage(state), "ok");
      case "M114" -> List.of(position(state), "ok");
      case "M155" -> {
        reportEveryNanos = seconds(command) * NANOS_PER_SECOND;
        reportedNanos = state.nanos();
        yield List.of("ok");
      }
      default -> List.of("echo:Unknown command: \"" + command + "\"", "ok");
    };
  }

  /** The line that is due unasked, if any; missed ones are not made up for. */
  List<String> unasked(PrinterState state) {
    if (reportEveryNanos == 0 || state.nanos() - reportedNanos < reportEveryNanos) {
      return List.of();
    }
    reportedNanos = state.nanos();
    return List.of(" " + temperatures(state));
  }

  private static String temperatures(PrinterState state) {
    return String.format(
        Locale.ROOT,
        "T:%.2f /%.2f B:60.00 /60.00 @:%d B@:40",
        state.celsius(),
        state.targetCelsius(),
        Math.round(state.duty() * DUTY_STEPS));
  }

  private static String storage(PrinterState state) {
    return state.state() == JobState.IDLE
        ? "Not SD printing"
        : "SD printing byte " + Math.round(state.progress() * JOB_BYTES) + "/" + JOB_BYTES;
  }

  private static String position(PrinterState state) {
    return String.format(
        Locale.ROOT,
        "X:100.00 Y:100.00 Z:5.00 E:%.2f Count X:8000 Y:8000 Z:2000",
        state.jobMillimetres());
  }

  private static int seconds(String command) {
    int at = command.indexOf('S');
    String digits = at < 0 ? "" : command.substring(at + 1).strip();
    return digits.matches("\\d{1,4}") ? Integer.parseInt(digits) : 0;
  }
}
