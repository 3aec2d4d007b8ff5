package meltkeeper.fuzz;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import meltkeeper.config.ConfigReader;
import meltkeeper.desk.Bench;
import meltkeeper.desk.RefusedException;
import meltkeeper.desk.ToldAct;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Texts far beyond all measure: refused in words that a person can read. */
@Timeout(60) // Against a path that never ends; no measure of speed.
final class ExtremesTest {

  private static final int MOST_WORDS = 10_000;

  /** Too much of one thing. */
  enum Extreme {
    LINE_OF_TEN_MEGABYTES("9".repeat(10_000_000)),
    OBJECTS_TEN_THOUSAND_DEEP("{\"at\":".repeat(10_000) + "1" + "}".repeat(10_000)),
    LISTS_TEN_THOUSAND_DEEP("[".repeat(10_000)),
    NUMBER_OF_A_MILLION_DIGITS("{\"restores\":" + "2".repeat(1_000_000) + "}"),
    HUNDRED_THOUSAND_KEYS("{" + "\"kind\":\"liner\",".repeat(100_000) + "\"kindness\":\"liner\"}"),
    TABLE_WITH_A_NUMBER_OF_A_MILLION_DIGITS(
        "id,kind,ended,temperature,hours\nP-1,liner,jam,215," + "4".repeat(1_000_000) + "\n"),
    TABLE_WITH_AN_OPEN_QUOTE(
        "id,kind,ended,temperature,hours\n\"" + "P-1,liner,jam,215,4\n".repeat(100_000)),
    TABLE_OF_ONE_HUNDRED_THOUSAND_COLUMNS("id" + ",id".repeat(100_000) + "\n"),
    NOT_UTF8("printers: { \uFFFD\uFFFD\uD800: \uDFFF }");

    private final String text;

    Extreme(String text) {
      this.text = text;
    }
  }

  @ParameterizedTest
  @EnumSource
  void extreme_asAConfiguration_isRefusedInWords(Extreme extreme) {
    String words =
        ConfigReader.read("meltkeeper.yaml", extreme.text)
            .fold(settings -> "taken", faults -> faults.toString());

    assertThat(words).isNotEqualTo("taken").hasSizeBetween(10, MOST_WORDS);
  }

  @ParameterizedTest
  @EnumSource
  void extreme_asATable_isRefusedInWords(Extreme extreme) {
    assertThatThrownBy(() -> new Bench().desk.paper().take("past.csv", extreme.text, Bench.NOW))
        .isInstanceOfSatisfying(RefusedException.class, ExtremesTest::isReadable);
  }

  @ParameterizedTest
  @EnumSource
  void extreme_asABody_isRefusedInWords(Extreme extreme) {
    assertThatThrownBy(() -> ToldAct.read("add", ToldAct.object(extreme.text)))
        .isInstanceOfSatisfying(RefusedException.class, ExtremesTest::isReadable);
  }

  private static void isReadable(RefusedException refused) {
    assertThat(refused.faults()).isNotEmpty();
    assertThat(refused.faults().toString().length()).isLessThan(MOST_WORDS);
  }
}
