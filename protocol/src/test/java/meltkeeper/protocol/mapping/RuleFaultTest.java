package meltkeeper.protocol.mapping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.Signal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a rule may not be, in the words that a person reads. */
class RuleFaultTest {

  private static final Map<String, JobState> RUN = Map.of("RUN", JobState.PRINTING);

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "FAN|0|0|0|scale: found \"0.0\"; allowed: a finite number other than 0",
        "FAN|NaN|0|0|scale: found \"NaN\"; allowed: a finite number other than 0",
        "FAN|1|Infinity|0|offset: found \"Infinity\"; allowed: a finite number",
        "JOB|2|0|0|scale: found \"2.0\"; allowed: none, for job is no number",
        "JOB_STATE|1|3|0|offset: found \"3.0\"; allowed: none, for job-state is no number",
        "FAN|1|0|16|hot-end: found \"16\"; allowed: 0 to 15, the first being 0",
        "FAN|1|0|-1|hot-end: found \"-1\"; allowed: 0 to 15, the first being 0",
      })
  void valueRule_thatCannotBe_isTold(
      Signal signal, double scale, double offset, int hotEnd, String words) {
    assertThat(ValueRule.fault(signal, scale, offset, Map.of(), hotEnd).map(Fault::toString))
        .contains(words);
    assertThatThrownBy(
            () -> new ValueRule(signal, JsonPath.of(""), scale, offset, Map.of(), hotEnd))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(words);
  }

  @Test
  void words_areForTheJobStateAlone() {
    assertThat(ValueRule.fault(Signal.JOB_STATE, 1, 0, RUN, 0)).isEmpty();
    assertThat(ValueRule.fault(Signal.MATERIAL, 1, 0, RUN, 0).map(Fault::toString))
        .contains("words: found \"[RUN]\"; allowed: none, for material has no words");
  }

  @Test
  void messageRule_ofAPlainPayload_hasOneValueAtTheEmptyPointerAndNoTime() {
    ValueRule fan = Heard.plain(Signal.FAN, "");
    assertThat(fault(PayloadForm.NUMBER, fan)).isEmpty();
    assertThat(fault(PayloadForm.NUMBER, fan, fan))
        .contains("read: found \"2 signals\"; allowed: one, for the payload is a number");
    assertThat(fault(PayloadForm.NUMBER, Heard.plain(Signal.FAN, "/fan")))
        .contains("read.fan: found \"/fan\"; allowed: \"\", for the payload itself is the value");
    assertThat(
            MessageRule.fault(PayloadForm.NUMBER, Heard.time("/at", TimeFormat.ISO), List.of(fan))
                .map(Fault::toString))
        .contains(
            "time: found \"/at\"; allowed: none, for a number alone tells no time; leave it out,"
                + " and the message counts from its arrival");
  }

  @Test
  void messageRule_ofTheWrongForm_namesTheRightOnes() {
    assertThat(fault(PayloadForm.TEXT, Heard.plain(Signal.FAN, "")))
        .contains("payload: found \"text\"; allowed: number or json; for fan is 0 to 1");
    assertThat(fault(PayloadForm.NUMBER, Heard.plain(Signal.JOB, "")))
        .contains("payload: found \"number\"; allowed: text or json; for job is a name");
  }

  @Test
  void messageRule_withoutValues_isTold() {
    assertThat(fault(PayloadForm.JSON))
        .contains("read: found \"nothing\"; allowed: at least one signal");
  }

  private static Optional<String> fault(PayloadForm form, ValueRule... values) {
    return MessageRule.fault(form, Optional.empty(), List.of(values)).map(Fault::toString);
  }
}
