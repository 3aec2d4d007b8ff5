package meltkeeper.demo;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import meltkeeper.protocol.JobState;

/** The ways in which the shop's printers tell their state to a broker. */
public enum Telling {
  /** One JSON object a message, with the printer's own time. */
  STATUS_JSON {
    @Override
    public List<Message> messages(String printer, PrinterState state) {
      String payload =
          String.format(
              Locale.ROOT,
              "{\"at\":\"%s\",\"hotend\":{\"now\":%.2f,\"set\":%.0f,\"pwm\":%.0f},"
                  + "\"feed\":{\"asked\":%.2f,\"seen\":%.2f,\"force\":%.1f},\"fan\":%.2f,"
                  + "\"job\":{\"state\":\"%s\",\"name\":\"%s\",\"done\":%.4f},"
                  + "\"spool\":{\"material\":\"%s\"}}",
              instant(state.nanos()),
              state.celsius(),
              state.targetCelsius(),
              state.duty() * PWM_STEPS,
              state.commandedMillimetres(),
              state.measuredMillimetres(),
              state.feedNewton(),
              state.fan(),
              word(state.state()),
              state.job(),
              state.progress(),
              state.material());
      return List.of(new Message(state.nanos(), "plant/" + printer + "/status", payload));
    }
  },
  /** One topic a value, the payload being the value; timed by arrival. */
  PLAIN_VALUES {
    @Override
    public List<Message> messages(String printer, PrinterState state) {
      String at = "bench/" + printer + "/";
      long nanos = state.nanos();
      return List.of(
          new Message(nanos, at + "job/state", state.state().word()),
          new Message(nanos, at + "feed/asked", number(state.commandedMillimetres())),
          new Message(nanos, at + "feed/seen", number(state.measuredMillimetres())),
          new Message(nanos, at + "hotend/duty", number(state.duty())),
          new Message(nanos, at + "hotend/set", number(state.targetCelsius())),
          new Message(nanos, at + "hotend/now", number(state.celsius())));
    }
  };

  private static final double PWM_STEPS = 127;

  /** What a printer of that name publishes of its state, in order. */
  public abstract List<Message> messages(String printer, PrinterState state);

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.2f", value);
  }

  private static String word(JobState state) {
    return switch (state) {
      case PRINTING -> "RUN";
      case PAUSED -> "HOLD";
      case IDLE -> "REST";
    };
  }

  static Instant instant(long nanos) {
    return Instant.ofEpochSecond(0, nanos);
  }
}
