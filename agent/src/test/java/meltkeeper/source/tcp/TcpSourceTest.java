package meltkeeper.source.tcp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.time.Duration;
import java.util.List;
import meltkeeper.source.PrinterPace;
import meltkeeper.source.PrinterSourceContract;
import meltkeeper.source.Source;
import meltkeeper.source.SteadyClock;
import meltkeeper.testing.RealParts;
import meltkeeper.testing.ScriptedPrinter;
import org.junit.jupiter.api.Test;

class TcpSourceTest extends PrinterSourceContract {

  @Override
  protected Source newSource(PrinterPace pace) {
    return sourceAt(printer.port(), pace);
  }

  @Override
  protected void plug() {
    printer.admit(true);
  }

  @Override
  protected void unplug() throws Exception {
    printer.admit(false);
    printer.hangUp();
  }

  @Test
  void halfOpenConnection_isMadeAnewAfterASilence() throws Exception {
    printer.follow(line -> List.of());
    try (Source anew = newSource(pace(true))) {
      anew.start(inlet);
      await().atMost(SOON).until(() -> printer.connections() > 1);
    }
  }

  @Test
  void printer_absentAtTheStart_isFoundWhenItComes() throws Exception {
    int port = RealParts.freePort();
    try (Source early = sourceAt(port, pace(true))) {
      early.start(inlet);
      await()
          .atMost(SOON)
          .untilAsserted(
              () ->
                  assertThat(early.state().reason())
                      .contains("127.0.0.1:" + port + " cannot be reached", "next try in"));
      try (ScriptedPrinter late = new ScriptedPrinter(port, ScriptedPrinter.POLLED)) {
        await().atMost(SOON).until(() -> late.heard().contains("M105"));
        await().atMost(SOON).until(() -> early.state().isUp());
      }
    }
  }

  @Test
  void name_thatNobodyKnows_isSaid() throws Exception {
    TcpSettings settings =
        new TcpSettings("ibis", "no-such-printer.invalid", 1, Duration.ofSeconds(2));
    try (Source nowhere = TcpSource.of(settings, new SteadyClock())) {
      nowhere.start(inlet);
      await()
          .atMost(SOON)
          .until(() -> nowhere.state().reason().contains("no-such-printer.invalid is not known"));
    }
  }

  private static Source sourceAt(int port, PrinterPace pace) {
    TcpSettings settings = new TcpSettings("ibis", "127.0.0.1", port, pace.every());
    return TcpSource.of(settings, new SteadyClock(), pace);
  }
}
