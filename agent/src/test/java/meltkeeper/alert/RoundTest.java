package meltkeeper.alert;

import static meltkeeper.alert.Calls.MORNING;
import static meltkeeper.alert.Calls.SECOND;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import meltkeeper.protocol.HotEnd;
import meltkeeper.store.Alert;
import meltkeeper.store.Alert.Phase;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Delivery;
import meltkeeper.store.Episode;
import meltkeeper.store.Letter;
import meltkeeper.store.Subject;
import org.junit.jupiter.api.Test;

/** What is tried first, and what is given up first. */
final class RoundTest {

  private static Letter letter(AlertTopic topic, int episode, Phase phase, int number) {
    Alert alert =
        new Alert(
            new Episode(
                topic, new Subject.OfHotEnd(HotEnd.first("heron")), MORNING + episode * SECOND),
            phase,
            number,
            MORNING,
            topic + " " + episode + " " + phase + " " + number);
    return new Letter(alert, Delivery.of(alert, "phone"), false, false);
  }

  private static List<String> texts(List<Letter> letters) {
    return letters.stream().map(letter -> letter.alert().text()).toList();
  }

  @Test
  void jamBehindAThousandReplacements_isTriedFirst() {
    List<Letter> waiting = new ArrayList<>();
    IntStream.range(0, 1000)
        .forEach(i -> waiting.add(letter(AlertTopic.PART_DUE, i, Phase.BEGAN, 0)));
    waiting.add(letter(AlertTopic.JAM_STALLED, 1000, Phase.BEGAN, 0));
    waiting.add(letter(AlertTopic.JAM_STALLED, 1000, Phase.ALL_CLEAR, 0));

    assertThat(texts(Round.of(waiting).letters()).subList(0, 3))
        .containsExactly(
            "JAM_STALLED 1000 BEGAN 0", "JAM_STALLED 1000 ALL_CLEAR 0", "PART_DUE 0 BEGAN 0");
  }

  @Test
  void reminder_isSupersededByALaterOneOfItsEpisodeAlone() {
    Letter began = letter(AlertTopic.IDLE_HOT, 1, Phase.BEGAN, 0);
    Letter first = letter(AlertTopic.IDLE_HOT, 1, Phase.REMINDER, 0);
    Letter second = letter(AlertTopic.IDLE_HOT, 1, Phase.REMINDER, 1);
    Letter other = letter(AlertTopic.IDLE_HOT, 2, Phase.REMINDER, 0);
    Round round = Round.of(List.of(began, first, other, second));

    assertThat(round.letters().stream().filter(round::isSuperseded)).containsExactly(first);
  }

  @Test
  void outboxThatHoldsAll_givesNothingUp() {
    List<Letter> waiting = List.of(letter(AlertTopic.PART_DUE, 1, Phase.BEGAN, 0));

    assertThat(Overflow.of(waiting, 1)).isEmpty();
  }

  @Test
  void fullOutbox_givesUpReminders_thenWhatCanWait_thenTheOldestEpisodesWhole() {
    List<Letter> waiting =
        List.of(
            letter(AlertTopic.JAM_STALLED, 1, Phase.BEGAN, 0),
            letter(AlertTopic.PART_DUE, 2, Phase.BEGAN, 0),
            letter(AlertTopic.JAM_STALLED, 3, Phase.BEGAN, 0),
            letter(AlertTopic.JAM_STALLED, 1, Phase.REMINDER, 0),
            letter(AlertTopic.JAM_STALLED, 1, Phase.ALL_CLEAR, 0),
            letter(AlertTopic.PART_DUE, 2, Phase.ALL_CLEAR, 0));

    assertThat(texts(Overflow.of(waiting, 5))).containsExactly("JAM_STALLED 1 REMINDER 0");
    assertThat(texts(Overflow.of(waiting, 4)))
        .containsExactly(
            "JAM_STALLED 1 REMINDER 0", "PART_DUE 2 BEGAN 0", "PART_DUE 2 ALL_CLEAR 0");
    assertThat(texts(Overflow.of(waiting, 1)))
        .containsExactly(
            "JAM_STALLED 1 REMINDER 0",
            "PART_DUE 2 BEGAN 0",
            "PART_DUE 2 ALL_CLEAR 0",
            "JAM_STALLED 1 BEGAN 0",
            "JAM_STALLED 1 ALL_CLEAR 0");
  }
}
