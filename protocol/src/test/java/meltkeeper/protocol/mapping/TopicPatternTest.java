package meltkeeper.protocol.mapping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Random;
import meltkeeper.protocol.Fault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TopicPatternTest {

  /** Source: OASIS MQTT 5.0, sections 4.7.1.2, 4.7.1.3, 4.7.2 and 4.7.3; those marked are ours. */
  @ParameterizedTest
  @CsvSource({
    "sport/tennis/player1/#, sport/tennis/player1, true",
    "sport/tennis/player1/#, sport/tennis/player1/ranking, true",
    "sport/tennis/player1/#, sport/tennis/player1/score/wimbledon, true",
    "sport/tennis/player1/#, sport/tennis/player10, false", // ours
    "sport/#, sport, true",
    "#, sport/tennis, true",
    "sport/tennis/+, sport/tennis/player1, true",
    "sport/tennis/+, sport/tennis/player2, true",
    "sport/tennis/+, sport/tennis/player1/ranking, false",
    "sport/+, sport, false",
    "sport/+, sport/, true",
    "+, sport, true", // ours
    "+/tennis/#, sport/tennis/player1, true", // ours
    "sport/+/player1, sport/tennis/player1, true", // ours
    "sport/+/player1, sport/tennis/player2, false", // ours
    "+/+, /finance, true",
    "/+, /finance, true",
    "+, /finance, false",
    "#, $SYS/monitor/Clients, false",
    "+/monitor/Clients, $SYS/monitor/Clients, false",
    "$SYS/#, $SYS/monitor/Clients, true",
    "$SYS/monitor/+, $SYS/monitor/Clients, true",
    "{printer}/monitor/Clients, $SYS/monitor/Clients, false", // ours, as +
    "ACCOUNTS, Accounts, false",
    "Accounts payable, Accounts payable, true",
    "/finance, finance, false",
    "finance/, finance, false", // ours
    "sport/tennis, sport, false", // ours
    "sport/tennis, sport/tennis/player1, false", // ours
  })
  void filter_ofTheStandard_matchesAsItSays(String filter, String topic, boolean matches) {
    assertThat(TopicPattern.of(filter).matches(topic)).isEqualTo(matches);
  }

  /** Source: OASIS MQTT 5.0, sections 4.7.1.2 and 4.7.1.3. */
  @ParameterizedTest
  @ValueSource(
      strings = {"#", "sport/tennis/#", "sport/#", "+", "+/tennis/#", "sport/+/player1", "/", "//"})
  void filter_thatTheStandardCallsValid_hasNoFault(String filter) {
    assertThat(TopicPattern.fault(filter)).isEmpty();
    assertThat(TopicPattern.of(filter).subscription()).isEqualTo(filter);
  }

  /** Source: OASIS MQTT 5.0, section 4.7; the last lines are our own rules. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "''|at least one character",
        "sport/tennis#|# only as the whole of the last level",
        "sport/tennis/#/ranking|# only as the whole of the last level",
        "sport+|+ only as a whole level",
        "sport/+tennis|+ only as a whole level",
        "plant/x{printer}/status|{printer} as a whole level and no other braces",
        "plant/{Printer}/status|{printer} as a whole level and no other braces",
        "{printer}/{printer}|{printer} at most once",
        "$share/group/plant/#|a topic filter that is not shared",
      })
  void filter_thatIsNotValid_isToldWithWhatIsAllowed(String filter, String allowed) {
    assertThat(TopicPattern.fault(filter).map(Fault::allowed)).contains(allowed);
    assertThat(TopicPattern.fault(filter).map(Fault::found)).contains(filter);
    assertThatThrownBy(() -> TopicPattern.of(filter))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining(allowed);
  }

  /** Source: OASIS MQTT 5.0, section 4.7.3, and 1.5.4 for the characters. */
  @Test
  void filter_withCharactersThatMqttCannotCarry_isNotValid() {
    assertThat(TopicPattern.fault("a\0b")).isPresent();
    assertThat(TopicPattern.fault("a\uD800b")).isPresent();
    assertThat(TopicPattern.fault("é".repeat(32_768))).isPresent();
    assertThat(TopicPattern.fault("é".repeat(32_767) + "a")).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "plant/{printer}/status, plant/heron/status, heron",
    "plant/{printer}/status, plant//status, ''",
    "plant/{printer}/#, plant/heron, heron",
    "plant/{printer}/#, plant/heron/a/b, heron",
    "+/{printer}, plant/heron, heron",
    "{printer}, heron, heron",
    "plant/+/{printer}, plant/bench 2/grey heron, grey heron",
  })
  void printer_inAMatchingTopic_isCaptured(String pattern, String topic, String printer) {
    assertThat(TopicPattern.of(pattern).capture(topic)).contains(printer);
  }

  @Test
  void capture_withoutMatchOrPlaceForIt_isEmpty() {
    assertThat(TopicPattern.of("plant/{printer}/status").capture("plant/heron/job")).isEmpty();
    assertThat(TopicPattern.of("plant/+/status").capture("plant/heron/status")).isEmpty();
    assertThat(TopicPattern.of("plant/+/status").capturesPrinter()).isFalse();
    assertThat(TopicPattern.of("plant/{printer}").capturesPrinter()).isTrue();
  }

  @Test
  void subscription_putsPlusForThePrinter() {
    assertThat(TopicPattern.of("plant/{printer}/status/#").subscription())
        .isEqualTo("plant/+/status/#");
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4})
  void anyFilterAndTopic_matchAsLevelByLevel(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 5_000; i++) {
      String filter = levels(random, "a", "b", "", "+", "#", "$c", "{printer}");
      String topic = levels(random, "a", "b", "", "$c");
      if (!topic.isEmpty() && TopicPattern.fault(filter).isEmpty()) {
        assertThat(TopicPattern.of(filter).matches(topic))
            .as(filter + " on " + topic)
            .isEqualTo(levelByLevel(filter.replace("{printer}", "+").split("/", -1), topic));
      }
    }
  }

  private static String levels(Random random, String... choice) {
    StringBuilder text = new StringBuilder();
    for (int i = random.nextInt(4); i >= 0; i--) {
      text.append(choice[random.nextInt(choice.length)]).append(i > 0 ? "/" : "");
    }
    return text.toString();
  }

  private static boolean levelByLevel(String[] filter, String topic) {
    String[] levels = topic.split("/", -1);
    boolean wild = filter[0].equals("+") || filter[0].equals("#");
    if (wild && topic.startsWith("$")) {
      return false;
    }
    for (int i = 0; i < filter.length; i++) {
      if (filter[i].equals("#")) {
        return true;
      }
      if (i >= levels.length || !(filter[i].equals("+") || filter[i].equals(levels[i]))) {
        return false;
      }
    }
    return filter.length == levels.length;
  }
}
