package meltkeeper.desk;

import static meltkeeper.desk.Bench.HERON;
import static meltkeeper.desk.Bench.HOUR;
import static meltkeeper.desk.Bench.MINUTE;
import static meltkeeper.desk.Bench.NOW;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import meltkeeper.part.Because;
import meltkeeper.store.Alert;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Episode;
import meltkeeper.store.Posting;
import meltkeeper.store.Subject;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The one question after a jam and a cold spell. */
final class QuestionDeskTest {

  private static final long JAM = NOW - 4 * HOUR;

  private final Bench bench = new Bench();
  private String liner = "";

  @BeforeEach
  void aLinerThatPrints() {
    liner = bench.add("liner");
    bench.fit(liner, HERON, "2026-03-09T00:00:00Z");
    bench.hot(HERON, JAM - 2 * HOUR, JAM, 225);
  }

  private Episode jam() {
    Episode episode = new Episode(AlertTopic.JAM_STALLED, new Subject.OfHotEnd(HERON), JAM);
    bench
        .store
        .outbox()
        .post(
            List.of(
                new Posting(
                    new Alert(episode, Alert.Phase.BEGAN, 0, JAM, "heron is stalled"), List.of())));
    return episode;
  }

  private List<SwapQuestion> asked() {
    return bench.desk.questions().open(NOW);
  }

  @Test
  void jam_coldSpell_andHeatAgain_asksOnce() {
    Episode episode = jam();
    bench.hot(HERON, JAM + 30 * MINUTE, JAM + HOUR, 225);

    assertThat(asked())
        .containsExactly(
            new SwapQuestion(
                episode.id(),
                "heron",
                0,
                Instant.parse("2026-03-10T08:00:00Z"),
                Instant.parse("2026-03-10T08:00:00Z"),
                Instant.parse("2026-03-10T08:30:00Z"),
                List.of("liner", "nozzle")));
  }

  @Test
  void jam_withoutAColdSpell_asksNothing() {
    jam();
    bench.hot(HERON, JAM, JAM + HOUR, 225);

    assertThat(asked()).isEmpty();
  }

  @Test
  void jam_stillCold_asksNothingYet() {
    jam();

    assertThat(asked()).isEmpty();
  }

  @Test
  void coldSpell_withoutAJam_asksNothing() {
    bench.hot(HERON, JAM + 30 * MINUTE, JAM + HOUR, 225);

    assertThat(asked()).isEmpty();
  }

  @Test
  void answerBySwap_endsTheQuestion() {
    jam();
    bench.hot(HERON, JAM + 30 * MINUTE, JAM + HOUR, 225);
    SwapQuestion question = asked().get(0);

    bench
        .desk
        .swaps()
        .swap(
            new SwapParts(
                "heron",
                0,
                "liner",
                Optional.empty(),
                Because.JAM,
                false,
                Bench.when(question.heated().toString())),
            NOW);

    assertThat(asked()).isEmpty();
    assertThat(bench.desk.parts().part(liner).line().ending()).isEqualTo("jam");
  }

  @Test
  void answerNothing_endsTheQuestion_alsoAfterAnewStart() {
    Episode episode = jam();
    bench.hot(HERON, JAM + 30 * MINUTE, JAM + HOUR, 225);

    bench.desk.questions().nothing(episode.id());

    assertThat(asked()).isEmpty();
    assertThat(Desk.of(bench.store, Bench.SHOP).questions().open(NOW)).isEmpty();
  }

  @Test
  void answerToAnUnknownEpisode_isRefused() {
    assertThatThrownBy(() -> bench.desk.questions().nothing("0123456789ab"))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("0123456789ab");
  }

  @Test
  void jamOfFourDaysAgo_isAskedNoMore() {
    jam();
    bench.hot(HERON, JAM + 30 * MINUTE, JAM + HOUR, 225);

    assertThat(bench.desk.questions().open(NOW + 96 * HOUR)).isEmpty();
  }
}
