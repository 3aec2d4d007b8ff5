package meltkeeper.protocol.gcode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/** Expected lines: RepRap dialect, common practice, no source. */
class RequestTest {

  @Test
  void requests_asSent_areTheseFourForms() {
    assertThat(sent(Request.Once.TEMPERATURES)).isEqualTo("M105\n");
    assertThat(sent(Request.Once.PROGRESS)).isEqualTo("M27\n");
    assertThat(sent(Request.Once.POSITION)).isEqualTo("M114\n");
    assertThat(sent(new Request.ReportEvery(2))).isEqualTo("M155 S2\n");
    assertThat(sent(new Request.ReportEvery(0))).isEqualTo("M155 S0\n");
    assertThat(Request.class.getPermittedSubclasses())
        .containsExactlyInAnyOrder(Request.Once.class, Request.ReportEvery.class);
  }

  @Test
  void reportEvery_outsideItsRange_isRefusedByName() {
    assertThatThrownBy(() -> new Request.ReportEvery(61))
        .hasMessage("61 s is not a period of reports; allowed: 0 to 60");
    assertThatThrownBy(() -> new Request.ReportEvery(-1))
        .hasMessage("-1 s is not a period of reports; allowed: 0 to 60");
  }

  private static String sent(Request request) {
    return new String(request.bytes(), StandardCharsets.US_ASCII);
  }
}
