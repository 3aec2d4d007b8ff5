package meltkeeper.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import meltkeeper.part.Kind;
import meltkeeper.store.MemoryStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What buttons and scanners may send, and what they are told when they send something else. */
final class ToldActTest {

  /** 2026-03-02T08:00:00Z (GNU date). */
  private static final long MORNING = 1_772_438_400_000_000_000L;

  private final Desk desk =
      Desk.of(
          new MemoryStore(),
          new Shop(
              List.of("heron"),
              List.of(
                  new Kind("liner", 4.5, 15, Optional.empty(), Optional.empty(), Optional.empty())),
              Optional.empty(),
              ZoneOffset.UTC));

  private String press(String word, String json) {
    return ToldAct.signed(word, json).done(desk, new When(ZoneOffset.UTC, MORNING)).done();
  }

  @Test
  void aSwap_isTold() {
    assertThat(press("add", "{\"kind\":\"liner\",\"part\":\"L-014\",\"by\":\"Mira\"}"))
        .isEqualTo("L-014 is known as a new liner");
    press(
        "fit",
        "{\"part\":\"L-014\",\"printer\":\"heron\",\"at\":\"2026-03-01T08:00\",\"by\":\"Mira\"}");
    assertThat(
            press(
                "remove",
                "{\"printer\":\"heron\",\"kind\":\"liner\",\"because\":\"jam\","
                    + "\"at\":\"2026-03-02T07:00\",\"by\":\"Mira\"}"))
        .contains("L-014", "2026-03-02 07:00");
    assertThat(press("retire", "{\"part\":\"L-014\",\"by\":\"Mira\"}")).contains("L-014");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "fitt | {} | verb: found \"fitt\"; allowed: one of add, fit, remove, clean, retire, swap, blame, undo; the nearest is fit",
        "fit | [] | allowed: one JSON object",
        "fit | {\"by\":\"Mira\" | allowed: one JSON object",
        "fit | {\"part\":\"L-1\",\"printer\":\"heron\"} | by: found \"\"; allowed: who sends it",
        "fit | {\"prt\":\"L-1\",\"by\":\"Mira\"} | prt: found \"prt\"; allowed: one of at, by, hot_end, part, printer; the nearest is",
        "fit | {\"part\":\"L-1\",\"by\":\"Mira\"} | printer: found \"\"; allowed: a text; it is missing",
        "fit | {\"part\":\"L-1\",\"printer\":\"heron\",\"hot_end\":\"one\",\"by\":\"Mira\"} | hot_end: found \"one\"; allowed: a whole number",
        "fit | {\"part\":\"L-1\",\"printer\":\"heron\",\"by\":\"Mira\"} | L-1",
        "fit | {\"part\":\"L-1\",\"printer\":\"hern\",\"by\":\"Mira\"} | did you mean heron?",
        "remove | {\"part\":\"L-1\",\"because\":\"jamm\",\"by\":\"Mira\"} | the nearest is jam",
        "clean | {\"part\":\"L-1\",\"by\":\"Mira\"} | restores: found \"NaN\"; allowed: 0 to 1"
      })
  void wrongCommand_isRefusedInWords(String word, String json, String words) {
    assertThatThrownBy(() -> press(word, json))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining(words);
  }
}
