package meltkeeper.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

class DemoCommandTest {

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... args) {
    return Main.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
  }

  @Test
  void demo_forAWhile_creditsEveryPrinterAndTellsWhatItSaw() {
    assertThat(run("demo", "--for", "8s", "--listen", "127.0.0.1:0")).isZero();

    assertThat(out.toString())
        .contains("page     http://127.0.0.1:", "It ends after 8s.", " 0 rejected.")
        .containsPattern("(?m)^L-011 +liner +on heron ");
    for (String printer : new String[] {"egret", "heron", "ibis", "kestrel"}) {
      // Eight seconds are eight minutes there: heated up within three, then hot.
      assertThat(out.toString())
          .containsPattern("(?m)^" + printer + " +\\w+ +2\\d\\d\\.\\d +[1-9]");
    }
    assertThat(err.toString()).isEmpty();
  }

  @Test
  void demo_forATimeThatIsNone_exitsWith2() {
    assertThat(run("demo", "--for", "soon")).isEqualTo(2);
    assertThat(err.toString()).contains("--for: found \"soon\"; allowed: a number and ms, s, m");
  }

  @Test
  void demo_fasterThanItCanBe_exitsWith2() {
    assertThat(run("demo", "--for", "1s", "--pace", "121")).isEqualTo(2);
    assertThat(err.toString()).contains("--pace: found \"121\"; allowed: 1 to 120");
  }

  @Test
  void demo_onAnAddressThatIsNone_exitsWith2() {
    assertThat(run("demo", "--for", "1s", "--listen", "nowhere")).isEqualTo(2);
    assertThat(err.toString()).contains("http.listen: found \"nowhere\"");
  }
}
