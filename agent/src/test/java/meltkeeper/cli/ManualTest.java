package meltkeeper.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import meltkeeper.testing.Tool;
import org.junit.jupiter.api.Test;

class ManualTest {

  private static String printed(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    assertThat(Main.run(new PrintWriter(out), new PrintWriter(err), arguments))
        .as(err.toString())
        .isZero();
    return out.toString();
  }

  @Test
  void manual_ofTheRealCommands_namesEachOfThem() {
    assertThat(printed("generate-manual"))
        .contains(
            ".SS \"meltkeeper run\"", ".SS \"meltkeeper part fit\"", ".SS \"meltkeeper life\"")
        .contains("\\fB\\-\\-prior\\-hours H\\fR");
  }

  @Test
  void manual_ofTheRealCommands_isWithoutWarningsInGroff() throws Exception {
    Tool.Answer shown =
        Tool.find("groff")
            .runOn(
                printed("generate-manual"), "-man", "-ww", "-K", "utf8", "-T", "utf8", "-P", "-c");
    assertThat(shown.code()).isZero();
    assertThat(shown.text()).contains("meltkeeper part fit").doesNotContain("warning");
  }

  @Test
  void completion_inARealBash_offersCommandsAndOptions() throws Exception {
    String script =
        printed("generate-completion")
            + """

            COMP_WORDS=(meltkeeper part f)
            COMP_CWORD=2
            COMPREPLY=()
            _complete_meltkeeper
            echo "offered: ${COMPREPLY[*]}"
            """;
    Tool.Answer answer = Tool.find("bash").runOn(script, "-s");
    assertThat(answer.text()).contains("offered: fit");
  }

  @Test
  void selfTest_endsWell() {
    assertThat(printed("self-test")).contains("all is well");
  }
}
