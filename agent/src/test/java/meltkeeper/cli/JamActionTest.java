package meltkeeper.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import meltkeeper.alert.route.JamAction;
import meltkeeper.config.ConfigReader;
import meltkeeper.config.Settings;
import meltkeeper.protocol.HotEnd;
import meltkeeper.source.SteadyClock;
import meltkeeper.store.Acknowledgement;
import meltkeeper.store.Alert;
import meltkeeper.store.AlertEntry;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Delivery;
import meltkeeper.store.Episode;
import meltkeeper.store.MemoryStore;
import meltkeeper.store.Posting;
import meltkeeper.store.Subject;
import meltkeeper.testing.ScriptedPrinter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A stall that is followed by the owner's own lines to the printer. */
final class JamActionTest {

  @TempDir private Path folder;

  private Settings settings(ScriptedPrinter printer) {
    return ConfigReader.read(
            folder.resolve("meltkeeper.yaml").toString(),
            """
            http: { listen: 127.0.0.1:0 }
            printers:
              ibis: { from: { tcp: "127.0.0.1:%d", every: 500ms } }
            alerts:
              jam-action: { send: [ M25, M104 S0 ], delay: 0s }
            """
                .formatted(printer.port()))
        .fold(
            valid -> valid,
            faults -> {
              throw new AssertionError(faults.toString());
            });
  }

  private static List<String> answer(String line) {
    return line.equals("M25") || line.equals("M104 S0")
        ? List.of("ok")
        : ScriptedPrinter.POLLED.apply(line);
  }

  private static Alert stall(String printer, int number) {
    Episode episode =
        new Episode(
            AlertTopic.JAM_STALLED, new Subject.OfHotEnd(HotEnd.first(printer)), 1_000L + number);
    return new Alert(episode, Alert.Phase.BEGAN, 0, 1_000L + number, printer + " is stalled");
  }

  private static List<Delivery.State> states(MemoryStore store) {
    return store.outbox().latest(10).stream()
        .filter(entry -> !entry.deliveries().isEmpty())
        .map(AlertEntry::deliveries)
        .map(deliveries -> deliveries.get(0).state())
        .toList();
  }

  @Test
  void stall_isFollowedByTheOwnersLines_onceAnEpisode_unlessSomebodySawToIt() throws Exception {
    MemoryStore store = new MemoryStore();
    try (ScriptedPrinter printer = new ScriptedPrinter(JamActionTest::answer);
        Agent agent =
            new Agent(settings(printer), store, new SteadyClock(), Duration.ofMillis(100))) {
      assertThat(agent.port()).isPositive();
      await().atMost(Duration.ofSeconds(30)).until(() -> printer.heard().contains("M27"));
      Alert seenTo = stall("ibis", 1);
      store.outbox().post(List.of(new Posting(seenTo, List.of())));
      store.outbox().acknowledge(seenTo.episode(), new Acknowledgement(2_000, "the shop"));
      List<String> action = List.of(JamAction.NAME);
      Alert again = new Alert(seenTo.episode(), Alert.Phase.BEGAN, 1, 2_000, "it is stalled");
      store
          .outbox()
          .post(
              List.of(
                  new Posting(again, action),
                  new Posting(stall("heron", 2), action),
                  new Posting(stall("ibis", 3), action)));

      await().atMost(Duration.ofSeconds(30)).until(() -> store.outbox().waiting().isEmpty());
      assertThat(states(store))
          .as("of the stall, of a printer out of reach, of what was seen to")
          .containsExactly(
              Delivery.State.DELIVERED, Delivery.State.CANCELLED, Delivery.State.CANCELLED);
      assertThat(printer.heard()).containsSubsequence("M25", "M104 S0");
      assertThat(printer.heard()).containsOnlyOnce("M25");
    }
  }

  @Test
  void runoutThatThePrinterTells_isCalledWithTheActionThatFollows_andActedOn() throws Exception {
    MemoryStore store = new MemoryStore();
    try (ScriptedPrinter printer = new ScriptedPrinter(JamActionTest::answer);
        Agent agent =
            new Agent(settings(printer), store, new SteadyClock(), Duration.ofMillis(100))) {
      assertThat(agent.port()).isPositive();
      await()
          .atMost(Duration.ofSeconds(60))
          .until(
              () -> {
                if (printer.heard().contains("M27")) {
                  printer.say("// action:out_of_filament\n");
                }
                return printer.heard().contains("M104 S0");
              });
      assertThat(store.outbox().latest(10))
          .extracting(AlertEntry::alert)
          .filteredOn(alert -> alert.phase() == Alert.Phase.BEGAN)
          .singleElement()
          .extracting(Alert::text)
          .asString()
          .contains("stalled", "The jam action follows in 0 s, unless you acknowledge this");
      assertThat(printer.heard()).containsOnlyOnce("M25");
    }
  }
}
