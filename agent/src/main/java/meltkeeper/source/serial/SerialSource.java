package meltkeeper.source.serial;

import java.time.Duration;
import meltkeeper.source.PrinterPace;
import meltkeeper.source.PrinterSource;
import meltkeeper.source.Source;
import meltkeeper.source.SteadyClock;

/**
 * A printer on a serial port.
 *
 * <p>Many controllers restart when the DTR line rises, and the system raises it whenever a port is
 * opened that was not. That cannot be helped for the first opening after plugging in. So the port
 * is opened once and kept open, silent or not; it is opened again only after it was unplugged.
 */
public final class SerialSource {

  private static final Duration SETTLE = Duration.ofSeconds(2);
  private static final Duration QUIET = Duration.ofSeconds(30);
  private static final Duration FIRST_PAUSE = Duration.ofMillis(500);
  private static final Duration LONGEST_PAUSE = Duration.ofSeconds(15);

  private SerialSource() {}

  public static Source of(SerialSettings settings, SteadyClock clock) {
    return of(
        settings,
        clock,
        new PrinterPace(settings.every(), SETTLE, QUIET, false, FIRST_PAUSE, LONGEST_PAUSE));
  }

  static Source of(SerialSettings settings, SteadyClock clock, PrinterPace pace) {
    SerialOpener opener = new SerialOpener(settings.device(), settings.baud());
    return new PrinterSource(settings.printer(), opener, pace, clock);
  }
}
