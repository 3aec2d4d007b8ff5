package meltkeeper.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.awaitility.Awaitility.await;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import meltkeeper.config.ConfigReader;
import meltkeeper.config.Settings;
import meltkeeper.ledger.Tally;
import meltkeeper.pipeline.HotEndLive;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Rejected;
import meltkeeper.source.SteadyClock;
import meltkeeper.store.MemoryStore;
import meltkeeper.testing.PseudoTerminal;
import meltkeeper.testing.ScriptedPrinter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A printer on a real pseudo-terminal, from its bytes to the hours that are stored. */
class SerialShopTest {

  private static final HotEnd IBIS = HotEnd.first("ibis");

  /** Millimetres that the printer is further each time it is asked for its position. */
  private static final int STEP = 5;

  @TempDir private Path folder = Path.of("");
  private final AtomicInteger positions = new AtomicInteger();

  private List<String> answer(String line) {
    return line.equals("M114")
        ? List.of("X:1.00 Y:2.00 Z:0.30 E:" + STEP * positions.getAndIncrement() + ".00", "ok")
        : ScriptedPrinter.POLLED.apply(line);
  }

  private Settings settings(PseudoTerminal terminal) {
    return ConfigReader.read(
            folder.resolve("meltkeeper.yaml").toString(),
            """
            http: { listen: 127.0.0.1:0 }
            printers:
              ibis: { from: { serial: %s, baud: 115200, every: 500ms } }
            """
                .formatted(terminal.device()))
        .fold(
            valid -> valid,
            faults -> {
              throw new AssertionError(faults.toString());
            });
  }

  @Test
  void noiseResendsAndAPulledPlug_loseNoHoursAndDoubleNone() throws Exception {
    MemoryStore store = new MemoryStore();
    SteadyClock clock = new SteadyClock();
    long before = clock.now().steadyNanos();
    long after;
    try (ScriptedPrinter printer = new ScriptedPrinter(this::answer)) {
      PseudoTerminal terminal = new PseudoTerminal(folder, printer.port());
      terminal.plug();
      try (Agent agent = new Agent(settings(terminal), store, clock, Duration.ofMillis(100))) {
        until("it is heard", () -> celsius(agent) > 200);
        printer.say("\u0007\u00ff T:2\u0000x#garbage\nok T:214.\n");
        printer.say("Resend: 17\nok\n");
        printer.say("Error:checksum mismatch, Last Line: 16\n");
        until("noise is counted", () -> faults(agent) >= 2);
        until("it prints", () -> positions.get() >= 3);

        terminal.unplug();
        int asked = positions.get();
        terminal.plug();
        until("it is heard again", () -> positions.get() >= asked + 3);
      }
      terminal.unplug();
      after = clock.now().steadyNanos();
    }

    Tally tally = store.tally(IBIS, Long.MIN_VALUE, Long.MAX_VALUE);
    double elapsed = (after - before) / 1e9;
    assertThat(tally.exposure().in(210).nanos()).isEqualTo(tally.exposure().hotNanos());
    // From the first answer to the last: opening the port takes at most some seconds.
    assertThat(tally.exposure().hotNanos() / 1e9).isLessThan(elapsed).isGreaterThan(elapsed - 8);
    assertThat(tally.unobservedNanos()).isZero();
    // The first position is where counting begins; one answer may be lost with the plug.
    assertThat(tally.commandedMicrometres() / 1000.0)
        .isCloseTo(STEP * (positions.get() - 1), within(2.0 * STEP));
  }

  private static double celsius(Agent agent) {
    return agent.live().hotEnd(IBIS).map(HotEndLive::celsius).orElseThrow().orElse(0);
  }

  private static long faults(Agent agent) {
    return agent.live().rejected().entrySet().stream()
        .filter(entry -> entry.getKey().isFault())
        .filter(entry -> entry.getKey() != Rejected.Reason.UNKNOWN_PRINTER)
        .mapToLong(entry -> entry.getValue())
        .sum();
  }

  private static void until(String what, BooleanSupplier condition) {
    await(what).atMost(Duration.ofSeconds(60)).ignoreExceptions().until(condition::getAsBoolean);
  }
}
