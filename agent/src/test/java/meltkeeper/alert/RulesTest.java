package meltkeeper.alert;

import static meltkeeper.alert.Calls.MORNING;
import static meltkeeper.alert.Calls.SECOND;
import static meltkeeper.alert.Calls.alert;
import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Optional;
import java.util.Random;
import meltkeeper.alert.Rules.What;
import meltkeeper.alert.route.QuietHours;
import meltkeeper.part.Moments;
import meltkeeper.protocol.Arrival;
import meltkeeper.store.Alert;
import meltkeeper.store.Alert.Phase;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Delivery;
import meltkeeper.store.Letter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** What is tried when: quiet hours, pauses, reminders, the jam action. */
final class RulesTest {

  private static final QuietHours NIGHT =
      new QuietHours(LocalTime.of(22, 0), LocalTime.of(7, 0), ZoneId.of("Europe/Vienna"));
  private static final Rules TELL = new Rules(Optional.of(NIGHT), Optional.empty());
  private static final Rules ACT =
      new Rules(
          Optional.empty(),
          Optional.of(new Rules.Act(Duration.ofMinutes(2), printer -> printer.equals("heron"))));

  /** 23:00 in Vienna, an hour ahead of UTC in winter. */
  private static final Arrival AT_NIGHT = at("2026-03-02T22:00:00Z");

  private static Arrival at(String instant) {
    return Arrival.at(Moments.nanos(Instant.parse(instant)));
  }

  private static Letter fresh(Alert alert) {
    return new Letter(alert, Delivery.of(alert, "phone"), false, false);
  }

  @ParameterizedTest
  @CsvSource({
    "2026-03-02T20:59:59Z, none",
    "2026-03-02T21:00:00Z, 2026-03-03T06:00:00Z",
    "2026-03-03T05:59:59Z, 2026-03-03T06:00:00Z",
    "2026-03-03T06:00:00Z, none",
    // The night in which summer time begins is an hour shorter.
    "2026-03-28T21:30:00Z, 2026-03-29T05:00:00Z"
  })
  void quietHours_endInTheShopsZone(String now, String end) {
    assertThat(NIGHT.endIfQuiet(Instant.parse(now)).map(Instant::toString).orElse("none"))
        .isEqualTo(end);
  }

  @Test
  void actionOnAPrinterThatItCannotReach_isCancelled() {
    Rules rules =
        new Rules(Optional.empty(), Optional.of(new Rules.Act(Duration.ZERO, "ibis"::equals)));

    assertThat(rules.judge(fresh(alert(AlertTopic.JAM_STALLED, Phase.BEGAN)), AT_NIGHT))
        .isEqualTo(new Rules.Verdict(What.CANCEL, 0, "there is no way to heron"));
  }

  @ParameterizedTest
  @EnumSource(AlertTopic.class)
  void topicAtNight_waitsOnlyIfItDoesNotPress(AlertTopic topic) {
    What what = TELL.judge(fresh(alert(topic, Phase.BEGAN)), AT_NIGHT).what();

    assertThat(what).isEqualTo(topic.isPressing() ? What.TRY : What.PUT_OFF);
  }

  @ParameterizedTest
  @EnumSource(
      value = AlertTopic.class,
      names = {
        "JAM_NARROWING",
        "JAM_STALLED",
        "JAM_BLIND",
        "TOO_HOT",
        "IDLE_HOT",
        "PRINTER_SILENT"
      })
  void jamsAndHeat_alwaysPress(AlertTopic topic) {
    assertThat(topic.isPressing()).isTrue();
  }

  @Test
  void failedTry_waitsForItsPause() {
    Alert alert = alert(AlertTopic.TOO_HOT, Phase.BEGAN);
    Letter failed =
        new Letter(
            alert,
            new Delivery(alert.id(), "phone", Delivery.State.WAITING, 1, MORNING, "no answer"),
            false,
            false);

    assertThat(TELL.judge(failed, Arrival.at(MORNING - 1)).what()).isEqualTo(What.WAIT);
    assertThat(TELL.judge(failed, Arrival.at(MORNING)).what()).isEqualTo(What.TRY);
  }

  @Test
  void alertFromAClockThatIsAhead_isTriedAtOnce() {
    assertThat(TELL.judge(fresh(alert(AlertTopic.TOO_HOT, Phase.BEGAN)), Arrival.at(0)).what())
        .isEqualTo(What.TRY);
  }

  @Test
  void reminder_onceAcknowledgedOrOver_isCancelled() {
    Alert reminder = alert(AlertTopic.TOO_HOT, Phase.REMINDER);
    Delivery delivery = Delivery.of(reminder, "phone");

    assertThat(TELL.judge(new Letter(reminder, delivery, true, false), AT_NIGHT).what())
        .isEqualTo(What.CANCEL);
    assertThat(TELL.judge(new Letter(reminder, delivery, false, true), AT_NIGHT).what())
        .isEqualTo(What.CANCEL);
    Alert began = alert(AlertTopic.TOO_HOT, Phase.BEGAN);
    assertThat(
            TELL.judge(new Letter(began, Delivery.of(began, "phone"), true, true), AT_NIGHT).what())
        .isEqualTo(What.TRY);
  }

  @Test
  void action_waitsItsDelay_thenActs() {
    Alert stalled = alert(AlertTopic.JAM_STALLED, Phase.BEGAN);
    Rules.Verdict first = ACT.judge(fresh(stalled), Arrival.at(MORNING));
    assertThat(first.what()).isEqualTo(What.PUT_OFF);
    assertThat(first.untilNanos()).isEqualTo(MORNING + 120 * SECOND);

    Delivery put =
        new Delivery(stalled.id(), "x", Delivery.State.WAITING, 0, first.untilNanos(), first.why());
    assertThat(
            ACT.judge(new Letter(stalled, put, false, false), Arrival.at(MORNING + 119 * SECOND))
                .what())
        .isEqualTo(What.WAIT);
    assertThat(
            ACT.judge(new Letter(stalled, put, false, false), Arrival.at(MORNING + 120 * SECOND))
                .what())
        .isEqualTo(What.TRY);
    assertThat(ACT.judge(new Letter(stalled, put, true, false), Arrival.at(MORNING + 120 * SECOND)))
        .extracting(Rules.Verdict::what, Rules.Verdict::why)
        .containsExactly(What.CANCEL, "it was acknowledged before");
    assertThat(
            ACT.judge(new Letter(stalled, put, false, true), Arrival.at(MORNING + 120 * SECOND))
                .what())
        .isEqualTo(What.CANCEL);
  }

  @ParameterizedTest
  @EnumSource(
      value = Phase.class,
      names = {"REMINDER", "ALL_CLEAR"})
  void action_isTakenAtTheBeginningAlone(Phase phase) {
    assertThat(ACT.judge(fresh(alert(AlertTopic.JAM_STALLED, phase)), AT_NIGHT).what())
        .isEqualTo(What.CANCEL);
  }

  @ParameterizedTest
  @CsvSource({"1, 2.5, 5", "2, 5, 10", "5, 40, 80", "9, 450, 900", "1000, 450, 900"})
  void pause_doublesUpToAQuarterOfAnHour(int failures, double least, double most) {
    Random random = new Random(failures);
    for (int i = 0; i < 100; i++) {
      assertThat(Pace.usual(100).pauseNanos(failures, random) / 1e9).isBetween(least, most);
    }
  }
}
