package meltkeeper.protocol.gcode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Expected lines: RepRap dialect, common practice, no source. */
class RequestTest {

  @Test
  void requests_asSent_areTheseForms() {
    assertThat(sent(Request.Once.TEMPERATURES)).isEqualTo("M105\n");
    assertThat(sent(Request.Once.PROGRESS)).isEqualTo("M27\n");
    assertThat(sent(Request.Once.POSITION)).isEqualTo("M114\n");
    assertThat(sent(new Request.ReportEvery(2))).isEqualTo("M155 S2\n");
    assertThat(sent(new Request.ReportEvery(0))).isEqualTo("M155 S0\n");
    assertThat(Request.class.getPermittedSubclasses())
        .containsExactlyInAnyOrder(
            Request.Once.class, Request.ReportEvery.class, Request.Ordered.class);
  }

  @Test
  void reportEvery_outsideItsRange_isRefusedByName() {
    assertThatThrownBy(() -> new Request.ReportEvery(61))
        .hasMessage("61 s is not a period of reports; allowed: 0 to 60");
    assertThatThrownBy(() -> new Request.ReportEvery(-1))
        .hasMessage("-1 s is not a period of reports; allowed: 0 to 60");
  }

  @ParameterizedTest
  @ValueSource(strings = {"M25", " m600 ", "M104 S0", "G91", "G1 Z10 F600", "M117 jammed, see me"})
  void ownersLine_isSentAsWritten(String text) {
    assertThat(Request.Ordered.read(text).map(RequestTest::sent)).contains(text.strip() + "\n");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "pause",
        "M25\nM104 S0",
        "N3 M25",
        "M25*91",
        "M25 ; rest",
        "M104 S200",
        "M109 R190",
        "M303 E0",
        "M140 S60",
        "M25\u00b0"
      })
  void ownersLine_thatIsNoneOrHeats_isRefused(String text) {
    assertThat(Request.Ordered.read(text)).isEmpty();
    assertThatThrownBy(() -> new Request.Ordered(text)).hasMessageContaining("heats nothing");
  }

  @Test
  void ownersLine_tooLong_isRefused() {
    assertThat(Request.Ordered.read("M117 " + "x".repeat(86))).isEmpty();
    assertThat(Request.Ordered.read("M117 " + "x".repeat(85))).isPresent();
  }

  @Test
  void codeOfAnOwnersLine_isItsFirstWord() {
    assertThat(new Request.Ordered("m104 S0").code()).isEqualTo("M104");
  }

  private static String sent(Request request) {
    return new String(request.bytes(), StandardCharsets.US_ASCII);
  }
}
