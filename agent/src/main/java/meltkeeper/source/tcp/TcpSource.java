package meltkeeper.source.tcp;

import java.time.Duration;
import meltkeeper.source.PrinterPace;
import meltkeeper.source.PrinterSource;
import meltkeeper.source.Source;
import meltkeeper.source.SteadyClock;

/**
 * A printer behind a TCP port. A connection that stays silent is made anew: the other side may be
 * gone without having said so.
 */
public final class TcpSource {

  private static final Duration QUIET = Duration.ofSeconds(60);
  private static final Duration FIRST_PAUSE = Duration.ofMillis(500);
  private static final Duration LONGEST_PAUSE = Duration.ofMinutes(1);

  private TcpSource() {}

  public static Source of(TcpSettings settings, SteadyClock clock) {
    return of(
        settings,
        clock,
        new PrinterPace(settings.every(), Duration.ZERO, QUIET, true, FIRST_PAUSE, LONGEST_PAUSE));
  }

  static Source of(TcpSettings settings, SteadyClock clock, PrinterPace pace) {
    TcpOpener opener = new TcpOpener(settings.host(), settings.port());
    return new PrinterSource(settings.printer(), opener, pace, clock);
  }
}
