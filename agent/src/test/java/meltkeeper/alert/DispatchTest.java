package meltkeeper.alert;

import static meltkeeper.alert.Calls.MORNING;
import static meltkeeper.alert.Calls.SECOND;
import static meltkeeper.alert.Calls.alert;
import static meltkeeper.alert.Calls.alerts;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import meltkeeper.alert.route.Message;
import meltkeeper.alert.route.Route;
import meltkeeper.alert.route.RouteSettings;
import meltkeeper.alert.route.Routes;
import meltkeeper.alert.route.Sending;
import meltkeeper.protocol.Arrival;
import meltkeeper.store.Acknowledgement;
import meltkeeper.store.Alert;
import meltkeeper.store.Alert.Phase;
import meltkeeper.store.AlertEntry;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Delivery;
import meltkeeper.store.Delivery.State;
import meltkeeper.store.MemoryStore;
import meltkeeper.store.Outbox;
import meltkeeper.store.Posting;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The routes at work over an outbox, with real receivers. */
final class DispatchTest {

  private static final Pace BRISK = new Pace(Duration.ofMillis(5), Duration.ofMillis(40), 4);

  private static final Routes ROUTES =
      new Routes(
          Calls.WORDS,
          Duration.ofHours(4),
          (broker, timeout) -> {
            throw new AssertionError("no broker in this test");
          },
          Sending.NOWHERE);

  private final Outbox outbox = new MemoryStore().outbox();
  private final List<String> received = new CopyOnWriteArrayList<>();
  private final AtomicLong now = new AtomicLong(MORNING);
  private final AtomicReference<Optional<String>> storeTrouble =
      new AtomicReference<>(Optional.empty());
  private volatile int answer = 200;
  private HttpServer server = served();

  private HttpServer served() {
    try {
      HttpServer made =
          HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
      made.createContext(
          "/",
          exchange -> {
            var json = new ObjectMapper().readTree(exchange.getRequestBody());
            if (answer == 200) {
              received.add(json.get("phase").asText() + " " + json.get("topic").asText());
            }
            exchange.sendResponseHeaders(answer, -1);
            exchange.close();
          });
      return made;
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  @BeforeEach
  void serve() {
    server.start();
  }

  @AfterEach
  void stop() {
    server.stop(0);
  }

  private RouteSettings phone(int port) {
    return Calls.settings(
        "phone",
        new RouteSettings.Webhook(
            URI.create("http://127.0.0.1:" + port + "/"),
            Optional.empty(),
            Map.of(),
            Optional.empty(),
            Optional.empty()));
  }

  private RouteSettings phone() {
    return phone(server.getAddress().getPort());
  }

  private Dispatch dispatch(RouteSettings... routes) {
    AlertSettings settings = alerts(List.of(routes));
    return new Dispatch(
        settings, ROUTES, BRISK, outbox, () -> Arrival.at(now.get()), storeTrouble::get);
  }

  private void post(Alert alert, String... routes) {
    outbox.post(List.of(new Posting(alert, List.of(routes))));
  }

  private State state(Alert alert, String route) {
    return outbox.latest(1000).stream()
        .filter(entry -> entry.alert().equals(alert))
        .map(AlertEntry::deliveries)
        .flatMap(List::stream)
        .filter(delivery -> delivery.route().equals(route))
        .map(Delivery::state)
        .findFirst()
        .orElseThrow();
  }

  private void untilState(Alert alert, State state) {
    await(state.label())
        .pollInterval(Duration.ofMillis(10))
        .untilAsserted(
            () -> {
              now.addAndGet(SECOND / 10);
              assertThat(state(alert, "phone")).isEqualTo(state);
            });
  }

  @Test
  void alertsOfAnEpisode_arriveInOrder_thoughTheRouteFailsAtFirst() {
    Alert began = alert(AlertTopic.TOO_HOT, Phase.BEGAN);
    Alert over = alert(AlertTopic.TOO_HOT, Phase.ALL_CLEAR);
    post(began, "phone");
    post(over, "phone");
    answer = 500;
    try (Dispatch dispatch = dispatch(phone())) {
      await()
          .untilAsserted(
              () -> assertThat(dispatch.states().get(0).trouble()).contains("it answered 500"));
      answer = 200;
      untilState(over, State.DELIVERED);
      assertThat(dispatch.states().get(0).trouble()).isEmpty();
      assertThat(dispatch.states().get(0).failed()).isPositive();
      assertThat(dispatch.states().get(0).delivered()).isEqualTo(2);
    }
    assertThat(received).containsExactly("began too-hot", "all-clear too-hot");
  }

  @Test
  void deliveryThatNeverPasses_isGivenUpVisibly() {
    Alert began = alert(AlertTopic.TOO_HOT, Phase.BEGAN);
    post(began, "phone");
    answer = 500;
    try (Dispatch dispatch = dispatch(phone())) {
      untilState(began, State.DEAD);
      assertThat(dispatch.states().get(0).dead()).isEqualTo(1);
      assertThat(dispatch.states().get(0).failed()).isEqualTo(4);
    }
    Delivery dead = outbox.latest(1).get(0).deliveries().get(0);
    assertThat(dead.attempts()).isEqualTo(4);
    assertThat(dead.detail()).isEqualTo("it answered 500");
  }

  @Test
  void routeThatHangs_holdsUpNoOther() throws IOException {
    List<Alert> many = new ArrayList<>();
    try (ServerSocket mute = new ServerSocket(0, 5, InetAddress.getLoopbackAddress())) {
      RouteSettings hanging =
          new RouteSettings(
              "hanging",
              phone().topics(),
              Optional.empty(),
              Duration.ofMinutes(2),
              phone(mute.getLocalPort()).way());
      try (Dispatch dispatch = dispatch(hanging, phone())) {
        for (int i = 0; i < 50; i++) {
          Alert one = alert(AlertTopic.TOO_HOT, Phase.BEGAN, i);
          many.add(one);
          post(one, "hanging", "phone");
        }
        for (Alert one : many) {
          untilState(one, State.DELIVERED);
        }
        assertThat(dispatch.states().get(0).delivered()).isZero();
      }
    }
    assertThat(many).allMatch(one -> state(one, "hanging") == State.WAITING);
  }

  @Test
  void fullOutbox_givesUpTheOldest_visibly() {
    List<Alert> many = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      many.add(alert(AlertTopic.TOO_HOT, Phase.BEGAN, i));
      post(many.get(i), "phone");
    }
    answer = 500;
    AlertSettings few = alerts(List.of(phone()), new OutboxLimits(Duration.ofDays(90), 10));
    try (Dispatch dispatch =
        new Dispatch(
            few, ROUTES, Pace.usual(100), outbox, () -> Arrival.at(now.get()), storeTrouble::get)) {
      await().until(() -> dispatch.states().get(0).dead() == 2);
      assertThat(dispatch.states().get(0).isFull()).isTrue();
    }
    assertThat(outbox.waiting()).isEqualTo(Map.of("phone", 10));
    for (Alert oldest : many.subList(0, 2)) {
      assertThat(state(oldest, "phone")).isEqualTo(State.DEAD);
    }
    assertThat(outbox.latest(12).get(11).deliveries().get(0).detail())
        .isEqualTo("the outbox was full: more than 10 alerts waited");
  }

  @Test
  void alertsThatCanWait_goTogether_afterTheJam_whichGoesAlone() {
    List<List<String>> taken = new CopyOnWriteArrayList<>();
    Route mail =
        new Route() {
          @Override
          public void deliver(Message message) {
            deliver(List.of(message));
          }

          @Override
          public boolean joins() {
            return true;
          }

          @Override
          public void deliver(List<Message> messages) {
            taken.add(messages.stream().map(m -> m.alert().topic().label()).toList());
          }
        };
    Alert last = alert(AlertTopic.JAM_STALLED, Phase.BEGAN);
    post(alert(AlertTopic.PART_DUE, Phase.BEGAN), "mail");
    post(alert(AlertTopic.PART_OVERDUE, Phase.BEGAN), "mail");
    post(alert(AlertTopic.BATCH_AT_RISK, Phase.BEGAN), "mail");
    post(last, "mail");
    try (Worker worker =
        new Worker(
            "mail",
            mail,
            new Rules(Optional.empty(), Optional.empty()),
            BRISK,
            outbox,
            () -> Arrival.at(now.get()))) {
      worker.start();
      await().until(() -> outbox.waiting().isEmpty());
      assertThat(worker.state().delivered()).isEqualTo(4);
    }
    assertThat(taken)
        .containsExactly(
            List.of("jam-stalled"), List.of("part-due", "part-overdue", "batch-at-risk"));
  }

  @Test
  void whatWaitsForARouteThatIsNoMore_isDead() {
    Alert began = alert(AlertTopic.TOO_HOT, Phase.BEGAN);
    post(began, "old-phone");
    try (Dispatch dispatch = dispatch(phone())) {
      await().until(() -> state(began, "old-phone") == State.DEAD);
      assertThat(dispatch.states()).hasSize(1);
    }
  }

  @Test
  void episodeThatGoesOn_isRemindedOf_untilItIsAcknowledged() {
    Alert began = alert(AlertTopic.IDLE_HOT, Phase.BEGAN);
    post(began, "phone");
    Reminders reminders =
        new Reminders(Duration.ofHours(4), topic -> List.of("phone"), Calls.WORDS, outbox);
    long hour = 3600 * SECOND;

    reminders.post(MORNING + 4 * hour - 1);
    assertThat(outbox.waiting("phone", 10)).hasSize(1);
    reminders.post(MORNING + 4 * hour);
    reminders.post(MORNING + 5 * hour);
    reminders.post(MORNING + 8 * hour);
    outbox.acknowledge(began.episode(), new Acknowledgement(MORNING + 9 * hour, "the shop"));
    reminders.post(MORNING + 20 * hour);

    assertThat(outbox.waiting("phone", 10))
        .extracting(letter -> letter.alert().phase())
        .containsExactly(Phase.BEGAN, Phase.REMINDER, Phase.REMINDER);
    assertThat(outbox.waiting("phone", 10))
        .extracting(letter -> letter.alert().id())
        .doesNotHaveDuplicates();
    assertThat(outbox.latest(1).get(0).alert().text())
        .isEqualTo("Since 2026-03-02 08:00 and not over: heron needs \"you\".");
  }

  @Test
  void historyAlone_isNeverRemindedOf() {
    post(alert(AlertTopic.IDLE_HOT, Phase.BEGAN));
    new Reminders(Duration.ofHours(4), topic -> List.of("phone"), Calls.WORDS, outbox)
        .post(MORNING + 90_000 * SECOND);

    assertThat(outbox.waiting()).isEmpty();
  }

  @Test
  void storeInTrouble_callsWithoutTheStore_andIsHistoryAfterwards() {
    StoreWatch watch = new StoreWatch(alerts(List.of(phone())), storeTrouble::get, outbox);
    try (Dispatch dispatch = dispatch(phone())) {
      assertThat(dispatch.states()).hasSize(1);
      Worker worker =
          new Worker(
              "phone",
              ROUTES.of(phone()),
              new Rules(Optional.empty(), Optional.empty()),
              BRISK,
              outbox,
              () -> Arrival.at(now.get()));
      try (worker) {
        worker.start();
        storeTrouble.set(Optional.of("the disk is full"));
        watch.look(MORNING, List.of(worker));
        watch.look(MORNING + 59 * SECOND, List.of(worker));
        assertThat(received).isEmpty();
        watch.look(MORNING + 60 * SECOND, List.of(worker));
        watch.look(MORNING + 90 * SECOND, List.of(worker));
        await().until(() -> received.size() == 1);
        storeTrouble.set(Optional.empty());
        watch.look(MORNING + 120 * SECOND, List.of(worker));
        await().until(() -> received.size() == 2);
      }
    }
    assertThat(received).containsExactly("began store-trouble", "all-clear store-trouble");
    assertThat(outbox.latest(10)).hasSize(2).allMatch(entry -> entry.deliveries().isEmpty());
  }
}
