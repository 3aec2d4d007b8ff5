package meltkeeper.store;

import static meltkeeper.store.StoreFixture.HERON;
import static meltkeeper.store.StoreFixture.MORNING;
import static meltkeeper.store.StoreFixture.SECOND;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import meltkeeper.store.Alert.Phase;
import org.junit.jupiter.api.Test;

final class EpisodesTest {

  private static final Subject HOT_END = new Subject.OfHotEnd(HERON);
  private static final List<String> ROUTES = List.of("phone");

  private final Episodes episodes = new Episodes(topic -> ROUTES, List.of());

  private void begin(long second, boolean isPast) {
    episodes.begin(
        AlertTopic.TOO_HOT, HOT_END, MORNING + second * SECOND, isPast, "heron is too hot");
  }

  private void end(long second) {
    episodes.end(AlertTopic.TOO_HOT, HOT_END, MORNING + second * SECOND, "heron has cooled");
  }

  @Test
  void episode_begunManyTimes_callsOnceAndClearsOnce() {
    begin(0, false);
    begin(1, false);
    end(2);
    end(3);

    assertThat(episodes.pending())
        .extracting(posting -> posting.alert().phase(), Posting::routes)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple(Phase.BEGAN, ROUTES),
            org.assertj.core.groups.Tuple.tuple(Phase.ALL_CLEAR, ROUTES));
    assertThat(episodes.pending().get(1).alert().episode())
        .isEqualTo(episodes.pending().get(0).alert().episode());
  }

  @Test
  void episodeAfterItsEnd_isAnotherOne() {
    begin(0, false);
    end(2);
    begin(3, false);

    assertThat(episodes.pending()).extracting(p -> p.alert().id()).doesNotHaveDuplicates();
  }

  @Test
  void findingInOldReadings_isHistoryAndCallsNobody() {
    begin(0, true);
    end(2);

    assertThat(episodes.pending()).hasSize(2).allMatch(posting -> posting.routes().isEmpty());
  }

  @Test
  void historyThatStillGoesOn_callsOnceReadingsAreCurrent() {
    begin(0, true);
    begin(5, true);
    assertThat(episodes.pending()).hasSize(1);

    begin(6, false);
    begin(7, false);
    end(8);

    assertThat(episodes.pending())
        .extracting(Posting::routes)
        .containsExactly(List.of(), ROUTES, ROUTES);
    assertThat(episodes.pending()).extracting(p -> p.alert().id()).doesNotHaveDuplicates();
    assertThat(episodes.pending())
        .extracting(p -> p.alert().episode().beganNanos())
        .containsOnly(MORNING);
  }

  @Test
  void episodeThatWentOnBeforeARestart_callsNobodyAgain_andStillClears() {
    begin(0, false);
    Alert began = episodes.pending().get(0).alert();
    Episodes restarted =
        new Episodes(topic -> ROUTES, List.of(new OpenEpisode(began, true, false)));
    restarted.begin(AlertTopic.TOO_HOT, HOT_END, MORNING + 60 * SECOND, false, "heron is too hot");
    restarted.end(AlertTopic.TOO_HOT, HOT_END, MORNING + 90 * SECOND, "heron has cooled");

    assertThat(restarted.pending())
        .extracting(posting -> posting.alert().episode())
        .containsExactly(began.episode());
  }

  @Test
  void sameFindingAfterACrash_hasTheSameId() {
    begin(0, false);
    Episodes again = new Episodes(topic -> ROUTES, List.of());
    again.begin(AlertTopic.TOO_HOT, HOT_END, MORNING, false, "heron is too hot");

    assertThat(again.pending()).isEqualTo(episodes.pending());
    assertThat(again.pending().get(0).alert().id()).matches("[0-9a-f]{12}");
  }

  @Test
  void cautions_goWithTheTroubleAndNotWithItsEnd() {
    begin(0, false);
    end(1);

    assertThat(episodes.pending().get(0).alert().cautions())
        .anySatisfy(caution -> assertThat(caution).contains("260 °C", "deadly to birds"));
    assertThat(episodes.pending().get(1).alert().cautions()).isEmpty();
  }
}
