package meltkeeper.source.serial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import meltkeeper.source.PrinterPace;
import meltkeeper.source.PrinterSourceContract;
import meltkeeper.source.Source;
import meltkeeper.source.SteadyClock;
import meltkeeper.testing.PseudoTerminal;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Over a real pseudo-terminal. */
class SerialSourceTest extends PrinterSourceContract {

  private static final int BAUD = 115_200;

  @TempDir Path folder;
  private @Nullable PseudoTerminal terminal;

  @Override
  protected Source newSource(PrinterPace pace) {
    SerialSettings settings =
        new SerialSettings("ibis", terminal().device().toString(), BAUD, pace.every());
    return SerialSource.of(settings, new SteadyClock(), pace);
  }

  @Override
  protected void plug() throws Exception {
    terminal().plug();
  }

  @Override
  protected void unplug() throws Exception {
    terminal().unplug();
  }

  @Test
  void device_absentAtTheStart_isSaidAndFoundWhenItComes() throws Exception {
    unplug();
    source.start(inlet);
    await().atMost(SOON).until(() -> source.state().reason().contains("next try in"));
    assertThat(source.state().reason()).contains("ttyTEST does not exist; is it plugged in?");

    plug();
    awaitAsked("M105");
  }

  @Test
  void file_thatIsNoSerialPort_isSaid() throws Exception {
    Path file = Files.createFile(folder.resolve("file"));
    SerialSettings settings =
        new SerialSettings("ibis", file.toString(), BAUD, Duration.ofSeconds(2));
    try (Source wrong = SerialSource.of(settings, new SteadyClock())) {
      wrong.start(inlet);
      await().atMost(SOON).until(() -> wrong.state().reason().contains("cannot be opened"));
    }
  }

  private PseudoTerminal terminal() {
    if (terminal == null) {
      terminal = new PseudoTerminal(folder, printer.port());
    }
    return terminal;
  }
}
