package meltkeeper.demo;

import java.time.Duration;
import java.util.function.Consumer;

/** A stretch of a printer's life told to a broker, as fast as it can be computed. */
public final class Day {

  private final SimulatedPrinter printer;
  private final Telling telling;
  private final Duration every;
  private final HotTime told = new HotTime(SimulatedPrinter.HOT_ABOVE_CELSIUS);

  /**
   * @param every between two messages; a divisor of 10 s, so that each turn of the job is told when
   *     it happens
   */
  public Day(PrinterSetup setup, Telling telling, Duration every) {
    this.printer = new SimulatedPrinter(setup);
    this.telling = telling;
    this.every = every;
  }

  /** Hands over what is published in that time, in order; may be called again to go on. */
  public void publish(Duration length, Consumer<Message> messages) {
    long count = length.toNanos() / every.toNanos();
    for (long i = 0; i < count; i++) {
      PrinterState state = printer.state();
      told.to(state.nanos(), Math.round(state.celsius() * 100) / 100.0);
      telling.messages(printer.name(), state).forEach(messages);
      printer.advance(every);
    }
  }

  /** What the printer really did. */
  public Truth truth() {
    return printer.truth();
  }

  /** Hot time under the straight lines between the temperatures as told, to 0.01 °C. */
  public HotTime told() {
    return told;
  }
}
