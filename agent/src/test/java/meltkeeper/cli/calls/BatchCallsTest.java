package meltkeeper.cli.calls;

import static meltkeeper.desk.Bench.HERON;
import static meltkeeper.desk.Bench.HOUR;
import static meltkeeper.desk.Bench.MINUTE;
import static meltkeeper.desk.Bench.NOW;
import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import meltkeeper.desk.Bench;
import meltkeeper.desk.Shop;
import meltkeeper.jam.Level;
import meltkeeper.jam.Outlook;
import meltkeeper.ledger.Tally;
import meltkeeper.outlook.OutlookDesk;
import meltkeeper.part.Belief;
import meltkeeper.part.Costs;
import meltkeeper.part.Kind;
import meltkeeper.part.Moments;
import meltkeeper.pipeline.HotEndLive;
import meltkeeper.pipeline.Live;
import meltkeeper.protocol.Arrival;
import meltkeeper.protocol.JobState;
import meltkeeper.store.Alert;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A printer that works with a liner near its end, and what is told of its batches. */
final class BatchCallsTest {

  private static final Shop SHOP =
      new Shop(
          List.of("heron"),
          List.of(
              new Kind(
                  "liner",
                  4.50,
                  15,
                  Optional.of(new Belief(600, 0.35, 2.5, 0.4, 10, 3, 220)),
                  Optional.empty(),
                  Optional.empty())),
          Optional.of(new Costs("EUR", 25, 18)),
          ZoneId.of("UTC"));

  private final Bench bench = new Bench(new meltkeeper.store.MemoryStore(), SHOP);
  private final OutlookDesk desk = new OutlookDesk(bench.store, SHOP);
  private Live live = Live.EMPTY;
  private OutlookCalls calls = calls(0.1);
  private long now = NOW;

  /** A liner with 620 hours at 222 degrees behind it, in batches of ten hours. */
  @BeforeEach
  void workALiner() {
    String liner = bench.add("liner");
    long from = NOW - 62 * 14 * HOUR;
    bench.fit(liner, HERON, Moments.instant(from).toString());
    for (int batch = 0; batch < 62; batch++) {
      long begin = from + batch * 14L * HOUR;
      bench.hot(HERON, begin, begin + 10 * HOUR, 222);
    }
  }

  private OutlookCalls calls(double atRiskAbove) {
    return new OutlookCalls(
        desk,
        () -> live,
        bench.store.outbox(),
        topic -> List.of("office"),
        new BatchLimits(atRiskAbove, hotEnd -> 150),
        OptionalLong::empty,
        ZoneId.of("UTC"));
  }

  private void seen(long afterNanos, JobState state, String job, double progress) {
    seen(afterNanos, Optional.of(state), job, OptionalDouble.of(progress));
  }

  private void seen(
      long afterNanos, Optional<JobState> state, String job, OptionalDouble progress) {
    now += afterNanos;
    live = live(state, job, progress, now);
    look();
  }

  private void look() {
    calls.look(Arrival.at(now));
  }

  private static Live live(
      Optional<JobState> state, String job, OptionalDouble progress, long heardNanos) {
    HotEndLive heron =
        new HotEndLive(
            HERON,
            heardNanos,
            OptionalDouble.of(24),
            OptionalDouble.of(222),
            OptionalDouble.empty(),
            state,
            job,
            "",
            progress,
            Tally.NONE,
            new Outlook(Level.BLIND, Map.of(), "nothing fed", Optional.empty(), Optional.empty()),
            0);
    return new Live(List.of(heron), 0, 0, Map.of(), List.of(), 0, Optional.empty());
  }

  private List<String> told() {
    List<String> told = new ArrayList<>();
    bench.store.outbox().latest(100).stream()
        .map(entry -> entry.alert())
        .filter(alert -> alert.topic() == meltkeeper.store.AlertTopic.BATCH_AT_RISK)
        .forEach(alert -> told.add(alert.phase().label() + " " + alert.text()));
    Collections.reverse(told);
    return told;
  }

  @Test
  void batchTooLongForTheLiner_callsOnce_andClearsWithItsEnd() {
    calls = calls(0.03);
    seen(0, JobState.IDLE, "", 1);
    seen(MINUTE, JobState.PRINTING, "labels-07", 1);
    seen(MINUTE, JobState.PRINTING, "labels-07", 0);
    seen(4 * MINUTE, JobState.PRINTING, "labels-07", 0.01);
    assertThat(told()).isEmpty();
    seen(26 * MINUTE, JobState.PRINTING, "labels-07", 0.02);
    seen(30 * MINUTE, JobState.PAUSED, "labels-07", 0.04);
    seen(30 * MINUTE, JobState.PRINTING, "labels-07", 0.06);

    assertThat(told()).hasSize(1);
    // 30 minutes for 2 % leave 24.5 hours for the other 98 %.
    assertThat(told().get(0))
        .startsWith("began heron has about 24.5 h of labels-07 to go, and with ")
        .contains(" a part fails within them: L-001 (liner) ");

    seen(HOUR, JobState.IDLE, "labels-07", 1);
    assertThat(told()).hasSize(2);
    assertThat(told().get(1)).isEqualTo("all-clear heron: the batch has ended.");
  }

  @Test
  void shortBatch_orAHighLimit_callsNobody() {
    seen(0, JobState.PRINTING, "tags", 0);
    seen(10 * MINUTE, JobState.PRINTING, "tags", 0.2);
    assertThat(told()).isEmpty();

    calls = calls(1);
    seen(0, JobState.PRINTING, "labels", 0);
    seen(HOUR, JobState.PRINTING, "labels", 0.021);
    assertThat(told()).isEmpty();
  }

  @Test
  void eachBatch_callsForItself() {
    seen(0, JobState.PRINTING, "labels-07", 0);
    seen(HOUR, JobState.PRINTING, "labels-07", 0.03);
    seen(MINUTE, JobState.PRINTING, "labels-08", 0.01);
    seen(HOUR, JobState.PRINTING, "labels-08", 0.04);

    assertThat(told()).hasSize(3);
    assertThat(told().get(1)).isEqualTo("all-clear heron: another batch runs.");
    assertThat(told().get(2)).startsWith("began heron has about ").contains("labels-08");
  }

  @Test
  void printerWithoutProgress_isJudgedByItsUsualBatch_ifItWasSeenToBegin() {
    calls = calls(0.01);
    seen(0, Optional.of(JobState.IDLE), "", OptionalDouble.empty());
    seen(MINUTE, Optional.of(JobState.PRINTING), "labels", OptionalDouble.empty());
    assertThat(told()).hasSize(1);
    assertThat(told().get(0)).startsWith("began heron has about 10.0 h of labels to go");
  }

  @Test
  void batchWhoseEndNobodyKnows_callsNobody() {
    calls = calls(0.001);
    seen(0, Optional.of(JobState.PRINTING), "labels", OptionalDouble.empty());
    seen(HOUR, Optional.of(JobState.PRINTING), "labels", OptionalDouble.empty());
    assertThat(told()).as("joined late").isEmpty();

    seen(HOUR, Optional.of(JobState.IDLE), "", OptionalDouble.empty());
    now += 40L * 24 * HOUR;
    seen(0, Optional.of(JobState.PRINTING), "labels", OptionalDouble.empty());
    assertThat(told()).as("no batch within the last four weeks").isEmpty();
  }

  @Test
  void agentStartedAnew_neitherCallsAgain_norClearsBeforeItHearsThePrinter() {
    seen(0, JobState.PRINTING, "labels", 0);
    seen(HOUR, JobState.PRINTING, "labels", 0.03);
    calls = calls(0.1);
    seen(MINUTE, Optional.empty(), "", OptionalDouble.empty());
    seen(MINUTE, JobState.PRINTING, "labels", 0.031);
    seen(HOUR, JobState.PRINTING, "labels", 0.06);
    assertThat(told()).hasSize(1);
    seen(MINUTE, JobState.IDLE, "labels", 0.06);
    assertThat(told()).hasSize(2);
  }

  @Test
  void printerUnheardForLong_hasEndedItsBatch() {
    seen(0, JobState.PRINTING, "labels", 0);
    seen(HOUR, JobState.PRINTING, "labels", 0.03);
    now += BatchCalls.SILENT_NANOS + 1;
    look();
    assertThat(told()).hasSize(2);
    assertThat(told().get(1)).isEqualTo("all-clear heron: it has not been heard for an hour.");
    assertThat(bench.store.outbox().latest(1).get(0).alert().phase())
        .isEqualTo(Alert.Phase.ALL_CLEAR);
  }
}
