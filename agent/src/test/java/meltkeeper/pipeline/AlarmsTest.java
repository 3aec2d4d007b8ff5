package meltkeeper.pipeline;

import static meltkeeper.pipeline.Heard.HERON;
import static meltkeeper.pipeline.Heard.nanos;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import meltkeeper.caution.Guard;
import meltkeeper.ledger.Limits;
import meltkeeper.part.Part;
import meltkeeper.part.PartEvent;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Sample;
import meltkeeper.store.AlertEntry;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.MemoryStore;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

final class AlarmsTest {

  private static final Calling CALLING =
      new Calling(
          hotEnd -> new Guard(OptionalDouble.empty(), 150, nanos(1_000_000), nanos(600)),
          Map.of("liner", 250.0),
          topic -> List.of("phone"),
          hotEnd -> Optional.empty(),
          nanos(600));

  private final MemoryStore store = new MemoryStore();
  private Intake intake = intake();

  private Intake intake() {
    return new Intake(
        Heard.DECODER,
        hotEnd -> Limits.DEFAULT,
        hotEnd -> meltkeeper.jam.WatchSettings.DEFAULT,
        store,
        CALLING);
  }

  @BeforeEach
  void fitALiner() {
    store.saveParts(
        0,
        List.of(
            Part.added("L-014", "liner", Optional.empty(), 0)
                .with(List.of(new PartEvent.Fitted(0, HERON, Optional.empty())))));
    intake.noticeFittings();
  }

  /** A reading of the printer's own clock. */
  private void heard(HotEnd hotEnd, double atSeconds, double arrivalSeconds, double celsius) {
    intake.reading(
        new Reading.HotEndTemperature(
            Sample.timed(hotEnd, nanos(atSeconds), nanos(arrivalSeconds)), celsius));
  }

  private void heard(double seconds, double celsius) {
    heard(HERON, seconds, seconds, celsius);
  }

  /** Oldest first, {@code too-hot began phone}. */
  /** All but that these printers, which tell temperatures alone, leave the jam watch blind. */
  private List<String> alerts() {
    intake.commit();
    List<String> alerts = new ArrayList<>();
    for (AlertEntry entry : store.outbox().latest(100)) {
      if (entry.alert().topic() == AlertTopic.JAM_BLIND) {
        continue;
      }
      String routes = entry.deliveries().isEmpty() ? "nobody" : entry.deliveries().get(0).route();
      alerts.add(
          0, entry.alert().topic().label() + " " + entry.alert().phase().label() + " " + routes);
    }
    return alerts;
  }

  @Test
  void linerAboveItsLimit_callsOnceAndClears() {
    for (int second = 0; second < 100; second += 2) {
      heard(second, 255);
    }
    heard(100, 230);

    assertThat(alerts()).containsExactly("too-hot began phone", "too-hot all-clear phone");
  }

  @Test
  void hotEndWithoutALiner_maybeHotter() {
    HotEnd ibis = HotEnd.first("ibis");
    for (int second = 0; second < 100; second += 2) {
      heard(ibis, second, second, 280);
    }

    assertThat(alerts()).isEmpty();
  }

  @Test
  void alertAndReading_areOneCommit() {
    heard(0, 255);
    heard(6, 255);

    assertThat(intake.pending().postings()).hasSize(1);
    assertThat(intake.pending().accounts()).hasSize(1);
  }

  @Test
  void restartInAnEpisode_callsNobodyAgain_andTheAllClearComes() {
    heard(0, 255);
    heard(6, 255);
    intake.commit();
    intake = intake();
    heard(8, 255);
    heard(16, 255);
    assertThat(alerts()).containsExactly("too-hot began phone");
    heard(18, 230);

    assertThat(alerts()).containsExactly("too-hot began phone", "too-hot all-clear phone");
  }

  @Test
  void backlogAfterAnOutage_isHistory_andCallsOnlyForWhatGoesOn() {
    double arrival = 100_000;
    for (int at = 0; at < 100_000; at += 100) {
      heard(HERON, at, arrival += 0.001, at == 200 || at == 300 || at > 90_000 ? 255 : 230);
    }
    assertThat(alerts())
        .containsExactly(
            "too-hot began nobody",
            "too-hot all-clear nobody",
            "too-hot began nobody",
            "too-hot began phone");
  }

  @Test
  void printerWithAWrongClock_callsOnceItsErrorIsKnown() {
    for (int second = 0; second <= 118; second += 2) {
      heard(HERON, second, 50_000 + second, 230);
    }
    for (int second = 120; second <= 200; second += 2) {
      heard(HERON, second, 50_000 + second, 255);
    }

    assertThat(alerts()).containsExactly("too-hot began phone");
  }

  @Test
  void printerSilentWhileHot_callsAndClears() {
    heard(0, 215);
    intake.look(nanos(599));
    assertThat(alerts()).isEmpty();
    intake.look(nanos(601));
    intake.look(nanos(602));
    heard(700, 215);

    assertThat(alerts())
        .containsExactly("printer-silent began phone", "printer-silent all-clear phone");
  }

  @Test
  void silenceBeforeARestart_endsWhenThePrinterIsHeard() {
    heard(0, 215);
    intake.look(nanos(601));
    intake.commit();
    intake = intake();
    intake.look(nanos(900));
    heard(1000, 30);

    assertThat(alerts())
        .containsExactly("printer-silent began phone", "printer-silent all-clear phone");
  }
}
