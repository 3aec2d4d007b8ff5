package meltkeeper.store;

import static meltkeeper.store.StoreFixture.HERON;
import static meltkeeper.store.StoreFixture.IBIS;
import static meltkeeper.store.StoreFixture.MORNING;
import static meltkeeper.store.StoreFixture.SECOND;
import static meltkeeper.store.StoreFixture.alert;
import static meltkeeper.store.StoreFixture.bucket;
import static meltkeeper.store.StoreFixture.hot;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.entry;

import java.util.List;
import java.util.Optional;
import meltkeeper.store.Alert.Phase;
import meltkeeper.store.Delivery.State;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What every store must do with alerts. */
public abstract class OutboxContract {

  private static final Episode HOT =
      new Episode(AlertTopic.TOO_HOT, new Subject.OfHotEnd(HERON), MORNING);
  private static final Episode DUE =
      new Episode(AlertTopic.PART_DUE, new Subject.OfPart("L-014", IBIS), MORNING);

  private Store store;

  protected abstract Store open();

  @BeforeEach
  void openStore() {
    store = open();
  }

  @AfterEach
  void closeStore() {
    store.close();
  }

  private static Posting post(Alert alert, String... routes) {
    return new Posting(alert, List.of(routes));
  }

  @Test
  void newStore_hasNoAlerts() {
    assertThat(store.outbox().latest(10)).isEmpty();
    assertThat(store.outbox().open()).isEmpty();
    assertThat(store.outbox().waiting("phone", 10)).isEmpty();
    assertThat(store.outbox().waiting()).isEmpty();
  }

  @Test
  void commitWithPostings_waitsOnEachRouteInOrder() {
    Alert began = alert(HOT, Phase.BEGAN, 0);
    Alert over = alert(HOT, Phase.ALL_CLEAR, 60);
    store.commit(
        new Commit(
            List.of(bucket(HERON, 0, hot(250, 10))),
            List.of(),
            List.of(),
            List.of(post(began, "phone", "log"), post(over, "phone")),
            List.of()));

    assertThat(store.outbox().waiting("phone", 10))
        .containsExactly(
            new Letter(began, Delivery.of(began, "phone"), false, true),
            new Letter(over, Delivery.of(over, "phone"), false, true));
    assertThat(store.outbox().waiting("log", 10)).extracting(Letter::alert).containsExactly(began);
    assertThat(store.outbox().waiting("phone", 1)).hasSize(1);
    assertThat(store.outbox().waiting()).containsOnly(entry("log", 1), entry("phone", 2));
  }

  @Test
  void alertOfEverySubject_comesBackAsItWas() {
    List<Alert> alerts =
        List.of(
            alert(HOT, Phase.BEGAN, 0),
            alert(DUE, Phase.REMINDER, 1),
            alert(
                new Episode(
                    AlertTopic.PRINTER_SILENT, new Subject.OfPrinter("grey heron 2"), MORNING),
                Phase.BEGAN,
                2),
            alert(
                new Episode(AlertTopic.STORE_TROUBLE, new Subject.OfAgent(), MORNING - 7),
                Phase.ALL_CLEAR,
                3));
    store.outbox().post(alerts.stream().map(alert -> post(alert, "phone")).toList());

    assertThat(store.outbox().latest(10))
        .extracting(AlertEntry::alert)
        .containsExactly(alerts.get(3), alerts.get(2), alerts.get(1), alerts.get(0));
    assertThat(store.outbox().latest(1)).extracting(AlertEntry::alert).containsOnly(alerts.get(3));
  }

  @Test
  void alertPostedAgain_changesNothing() {
    Alert began = alert(HOT, Phase.BEGAN, 0);
    store.outbox().post(List.of(post(began, "phone")));
    store.outbox().note(delivery(began, State.DELIVERED, 1));
    store.outbox().post(List.of(post(began, "phone", "log")));

    assertThat(store.outbox().latest(10))
        .containsExactly(
            new AlertEntry(began, List.of(delivery(began, State.DELIVERED, 1)), Optional.empty()));
    assertThat(store.outbox().waiting()).isEmpty();
  }

  private static Delivery delivery(Alert alert, State state, int attempts) {
    return new Delivery(alert.id(), "phone", state, attempts, MORNING, "");
  }

  @Test
  void failedAttempt_waitsOn_withItsReason() {
    Alert began = alert(HOT, Phase.BEGAN, 0);
    store.outbox().post(List.of(post(began, "phone")));
    Delivery failed =
        new Delivery(began.id(), "phone", State.WAITING, 3, MORNING + 9, "it answered 500");
    store.outbox().note(failed);

    assertThat(store.outbox().waiting("phone", 10))
        .extracting(Letter::delivery)
        .containsExactly(failed);
  }

  @Test
  void severalNotedTogether_areAllNoted() {
    Alert began = alert(HOT, Phase.BEGAN, 0);
    Alert due = alert(DUE, Phase.BEGAN, 1);
    store.outbox().post(List.of(post(began, "phone"), post(due, "phone")));
    store.outbox().note(List.of(delivery(began, State.DEAD, 1), delivery(due, State.DELIVERED, 1)));

    assertThat(store.outbox().waiting()).isEmpty();
    assertThat(store.outbox().latest(2))
        .extracting(entry -> entry.deliveries().get(0).state())
        .containsExactly(State.DELIVERED, State.DEAD);
  }

  @Test
  void oldEpisode_isForgotten_onceItIsOverAndNothingWaits() {
    Alert began = alert(HOT, Phase.BEGAN, 0);
    Alert over = alert(HOT, Phase.ALL_CLEAR, 60);
    store.outbox().post(List.of(post(began, "phone"), post(over)));
    long after = MORNING + 61 * SECOND;

    assertThat(store.outbox().prune(after, 10)).as("it waits").isZero();
    store.outbox().note(delivery(began, State.DEAD, 1));
    assertThat(store.outbox().prune(over.atNanos(), 10)).as("its end is recent").isZero();
    assertThat(store.outbox().prune(after, 0)).as("none may go").isZero();
    assertThat(store.outbox().latest(10)).hasSize(2);
    assertThat(store.outbox().prune(after, 10)).isEqualTo(1);
    assertThat(store.outbox().latest(10)).isEmpty();
    assertThat(store.outbox().acknowledge(HOT, new Acknowledgement(after, "the shop"))).isFalse();
  }

  @Test
  void episodeThatGoesOn_keepsItsBeginningAndItsLatestReminder() {
    store.outbox().post(List.of(post(alert(DUE, Phase.BEGAN, 0), "phone")));
    for (int i = 0; i < 3; i++) {
      Alert reminder = new Alert(DUE, Phase.REMINDER, i, MORNING + (10 + i) * SECOND, "due still");
      store.outbox().post(List.of(post(reminder, "phone")));
    }
    store
        .outbox()
        .note(
            store.outbox().waiting("phone", 10).stream()
                .map(letter -> delivery(letter.alert(), State.DELIVERED, 1))
                .toList());
    List<OpenEpisode> before = store.outbox().open();

    assertThat(store.outbox().prune(MORNING + 100 * SECOND, 10)).isZero();
    assertThat(store.outbox().latest(10))
        .extracting(entry -> entry.alert().phase() + " " + entry.alert().number())
        .containsExactly("REMINDER 2", "BEGAN 0");
    assertThat(store.outbox().open()).isEqualTo(before);
  }

  @Test
  void deliveryThatWaitsNoMore_isNeverNotedAgain() {
    Alert began = alert(HOT, Phase.BEGAN, 0);
    store.outbox().post(List.of(post(began, "phone")));
    store.outbox().note(delivery(began, State.DEAD, 4));
    store.outbox().note(delivery(began, State.WAITING, 5));

    assertThat(store.outbox().waiting("phone", 10)).isEmpty();
    assertThat(store.outbox().latest(1).get(0).deliveries())
        .containsExactly(delivery(began, State.DEAD, 4));
  }

  @Test
  void episode_isOpenUntilItsAllClear() {
    store
        .outbox()
        .post(List.of(post(alert(HOT, Phase.BEGAN, 0)), post(alert(DUE, Phase.BEGAN, 1))));
    Alert reminder = alert(HOT, Phase.REMINDER, 60);
    store.outbox().post(List.of(post(reminder, "phone")));

    assertThat(store.outbox().open())
        .containsExactly(
            new OpenEpisode(reminder, true, false),
            new OpenEpisode(alert(DUE, Phase.BEGAN, 1), false, false));

    store.outbox().post(List.of(post(alert(HOT, Phase.ALL_CLEAR, 90))));
    assertThat(store.outbox().open())
        .extracting(open -> open.latest().episode())
        .containsExactly(DUE);
  }

  @Test
  void acknowledgement_showsOnTheEpisode_andTheFirstStays() {
    Alert began = alert(HOT, Phase.BEGAN, 0);
    store.outbox().post(List.of(post(began, "phone")));
    Acknowledgement first = new Acknowledgement(MORNING + SECOND, "the shop");

    assertThat(store.outbox().acknowledge(HOT, first)).isTrue();
    assertThat(store.outbox().acknowledge(HOT, new Acknowledgement(MORNING, "another"))).isTrue();
    assertThat(store.outbox().acknowledge(DUE, first)).isFalse();
    assertThat(store.outbox().latest(1).get(0).acknowledged()).contains(first);
    assertThat(store.outbox().open()).extracting(OpenEpisode::isAcknowledged).containsOnly(true);
    assertThat(store.outbox().waiting("phone", 1))
        .extracting(Letter::isAcknowledged)
        .containsOnly(true);
  }

  @Test
  void settledEpisode_isKept_andItsAlertsStay() {
    store.outbox().post(List.of(post(alert(HOT, Phase.BEGAN, 0), "phone")));

    assertThat(store.outbox().settle(DUE)).isFalse();
    assertThat(store.outbox().settled()).isEmpty();
    assertThat(store.outbox().settle(HOT)).isTrue();
    assertThat(store.outbox().settle(HOT)).isTrue();
    assertThat(store.outbox().settled()).containsExactly(HOT);
    assertThat(store.outbox().latest(1)).hasSize(1);
  }
}
