package meltkeeper.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.gcode.Report;
import meltkeeper.protocol.gcode.Request;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Lines of the RepRap dialect: common practice, no source. */
class ConversationTest {

  private static final Duration EVERY = Duration.ofSeconds(2);
  private static final String UNKNOWN = "echo:Unknown command: \"%s\"";

  private long now = -5_000_000_000L;
  private Conversation conversation = new Conversation(EVERY, Duration.ZERO, now);

  @Test
  void firstRequest_isForReportsAtThePeriod() {
    assertThat(due()).containsExactly("M155 S2");
    assertThat(due()).isEmpty();
  }

  @Test
  void newConnection_isLeftInPeaceUntilItSettledOrSpoke() {
    conversation = new Conversation(EVERY, Duration.ofSeconds(3), now);
    assertThat(due()).isEmpty();
    assertThat(conversation.idle(now)).isEqualTo(EVERY);
    pass(2.9);
    assertThat(due()).isEmpty();
    pass(0.2);
    assertThat(due()).containsExactly("M155 S2");

    conversation = new Conversation(EVERY, Duration.ofSeconds(3), now);
    hear("T:20.0 /0.0");
    assertThat(due()).containsExactly("M155 S2");
  }

  @Test
  void printerThatReportsByItself_isAskedOnlyHowFarTheJobIs() {
    due();
    hear("ok");
    assertThat(duringSeconds(20, " T:214.9 /215.0 @:54", "ok"))
        .hasSizeBetween(5, 6)
        .allMatch("M27"::equals);
  }

  @Test
  void ownersLines_goBeforeAllElse_eachOnceTheOneBeforeIsTaken() {
    due();
    conversation.order(List.of(new Request.Ordered("M25"), new Request.Ordered("M104 S0")));
    assertThat(conversation.isFree(now)).isFalse();
    assertThat(due()).as("an answer is still to come").isEmpty();
    hear("ok");

    assertThat(due()).containsExactly("M25");
    assertThat(due()).isEmpty();
    hear("ok");
    assertThat(due()).containsExactly("M104 S0");
    hear("ok");
    assertThat(due()).containsExactly("M27");
  }

  @Test
  void ownersLineThatThePrinterDoesNotKnow_changesNothingInTheTalk() {
    due();
    hear("ok");
    conversation.order(List.of(new Request.Ordered("M25")));
    assertThat(due()).containsExactly("M25");
    hear(UNKNOWN.formatted("M25"));
    hear("ok");
    assertThat(duringSeconds(20, " T:214.9 /215.0 @:54", "ok")).allMatch("M27"::equals);
  }

  @Test
  void restartedPrinter_isNotSentTheOwnersLinesAnyMore() {
    due();
    hear("ok");
    conversation.order(List.of(new Request.Ordered("M25")));
    hear("start");
    assertThat(due()).containsExactly("M155 S2");
    assertThat(conversation.isFree(now)).isFalse();
  }

  @Test
  void printerThatDoesNotKnowReports_isPolled() {
    due();
    hear(UNKNOWN.formatted("M155 S2"));
    assertThat(due()).as("its ok is still to come").isEmpty();
    hear("ok");

    assertThat(due()).containsExactly("M105");
    hear("ok T:20.1 /0.0");
    assertThat(due()).containsExactly("M27");
    hear("Not SD printing");
    hear("ok");
    assertThat(due()).isEmpty();
    pass(2);
    assertThat(due()).containsExactly("M105");
  }

  @Test
  void printerThatAgreesToReportButDoesNot_isPolledSoon() {
    due();
    hear("ok");
    assertThat(duringSeconds(7.9, "", "ok")).containsOnly("M27");
    assertThat(duringSeconds(10, "", "ok")).contains("M105");
  }

  @Test
  void position_isAskedOnlyWhileAJobPrints() {
    settleOnPolling();
    hear("Not SD printing");
    assertThat(duringSeconds(10, "", "ok")).doesNotContain("M114");
    hear("SD printing byte 10/100");
    assertThat(duringSeconds(10, "", "ok")).contains("M114", "M105", "M27");
    hear("Done printing file");
    assertThat(duringSeconds(10, "", "ok")).doesNotContain("M114");
  }

  @Test
  void position_isAskedAlwaysWhereThePrinterCannotTellOfJobs() {
    due();
    hear("ok");
    assertThat(due()).containsExactly("M27");
    hear(UNKNOWN.formatted("M27"));
    hear("ok");

    assertThat(due()).containsExactly("M114");
    hear("ok");
    assertThat(duringSeconds(10, "T:20 /0", "ok")).containsOnly("M114");
  }

  @Test
  void busyPrinter_isWaitedForHoweverLong() {
    due();
    for (int second = 0; second < 600; second += 2) {
      hear("echo:busy: processing");
      pass(2);
      assertThat(due()).isEmpty();
    }
    hear("ok");
    assertThat(due()).containsExactly("M27");
  }

  @Test
  void unansweredRequest_isSentAgain_withTwiceThePatienceEachTime() {
    settleOnPolling();
    pass(4);
    assertThat(due()).hasSize(1);
    List<Double> waits = new ArrayList<>();
    for (int i = 0; i < 7; i++) {
      double waited = 0;
      // A heating printer tells its temperature, but acknowledges nothing.
      while (due().isEmpty()) {
        hear("T:180.5 E:0 W:?");
        pass(0.5);
        waited += 0.5;
      }
      waits.add(waited);
    }
    // 10 s is ours, see PATIENCE; then doubled to 4 minutes.
    assertThat(waits).containsExactly(10.0, 20.0, 40.0, 80.0, 160.0, 240.0, 240.0);
    hear("ok");
    pass(4);
    assertThat(due()).hasSize(1);
    pass(10);
    assertThat(due()).as("patience begins anew after an answer").hasSize(1);
  }

  @Test
  void reportsNeverAnswered_areAskedForThreeTimes_thenThePrinterIsPolled() {
    assertThat(due()).containsExactly("M155 S2");
    pass(10);
    assertThat(due()).containsExactly("M155 S2");
    pass(20);
    assertThat(due()).containsExactly("M155 S2");
    pass(40);
    assertThat(due()).containsAnyOf("M105", "M27");
  }

  @Test
  void restartedPrinter_isAskedFromTheBeginning() {
    settleOnPolling();
    pass(4);
    due();
    hear("start");
    assertThat(due()).containsExactly("M155 S2");
  }

  @Test
  void unaskedAcknowledgement_changesNothing() {
    settleOnPolling();
    hear("ok");
    hear("ok");
    pass(2);
    assertThat(due()).hasSize(1);
    assertThat(due()).isEmpty();
  }

  @Test
  void period_isRoundedToWholeSecondsForReports() {
    assertThat(firstAsked(Duration.ofMillis(200))).isEqualTo("M155 S1");
    assertThat(firstAsked(Duration.ofMillis(2600))).isEqualTo("M155 S3");
    assertThat(firstAsked(Duration.ofMinutes(5))).isEqualTo("M155 S60");
  }

  @Test
  void period_notAboveZero_isRefused() {
    assertThatThrownBy(() -> new Conversation(Duration.ZERO, Duration.ZERO, 0))
        .hasMessageContaining("PT0S")
        .hasMessageContaining("above zero");
  }

  @Test
  void silence_isCountedFromTheLastLine() {
    pass(3);
    assertThat(conversation.silence(now)).isEqualTo(Duration.ofSeconds(3));
    hear("what a day");
    pass(1);
    assertThat(conversation.silence(now)).isEqualTo(Duration.ofSeconds(1));
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void anyAnswers_neverMakeItFloodThePrinter(long seed) {
    Random random = new Random(seed);
    List<String> said =
        List.of(
            "ok",
            "ok T:200 /200",
            "echo:busy: processing",
            "SD printing byte 1/9",
            "Not SD printing",
            UNKNOWN.formatted("M27"),
            UNKNOWN.formatted("M114"),
            "Resend: 4",
            "Error:checksum",
            "#%&",
            "T:1 /2");
    int asked = 0;
    int acknowledged = 0;
    for (int step = 0; step < 10_000; step++) {
      if (random.nextInt(3) == 0) {
        String line = said.get(random.nextInt(said.size()));
        acknowledged += line.startsWith("ok") ? 1 : 0;
        hear(line);
      }
      pass(0.05);
      asked += due().size();
      assertThat(conversation.idle(now)).isBetween(Duration.ZERO, EVERY);
    }
    // Within 500 s: three kinds at most every 2 s, and none while one is under way.
    assertThat(asked).isPositive().isLessThanOrEqualTo(3 * 250 + 3);
    assertThat(asked).isLessThanOrEqualTo(acknowledged + 500 / 10 + 1);
  }

  private void settleOnPolling() {
    due();
    hear(UNKNOWN.formatted("M155 S2"));
    hear("ok");
    due();
    hear("ok");
    due();
    hear("ok T:20.0 /0.0");
    assertThat(due()).isEmpty();
  }

  /** What is asked when the printer says one thing each second and answers each request at once. */
  private List<String> duringSeconds(double seconds, String eachSecond, String answer) {
    List<String> asked = new ArrayList<>();
    for (int tick = 0; tick < seconds * 10; tick++) {
      if (tick % 10 == 0 && !eachSecond.isEmpty()) {
        hear(eachSecond);
      }
      List<String> now = due();
      if (!now.isEmpty()) {
        hear(answer);
      }
      asked.addAll(now);
      pass(0.1);
    }
    return asked;
  }

  private static String firstAsked(Duration every) {
    return new Conversation(every, Duration.ZERO, 0).due(0).map(Request::text).orElseThrow();
  }

  private void hear(String line) {
    conversation.hear(Report.of(Payload.of(line)), now);
  }

  private List<String> due() {
    return conversation.due(now).map(Request::text).stream().toList();
  }

  private void pass(double seconds) {
    now += Math.round(seconds * 1e9);
  }
}
