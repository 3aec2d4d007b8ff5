package meltkeeper.cli.manual;

import static org.assertj.core.api.Assertions.assertThat;

import meltkeeper.testing.Tool;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

class ManualPageTest {

  @Command(
      name = "kiln",
      description = "Fires plates.",
      mixinStandardHelpOptions = true,
      subcommands = {Fire.class, Secret.class},
      exitCodeList = {"0:done"})
  static final class Kiln {}

  @Command(
      name = "fire",
      description = {"Fires one plate,", "100%% evenly."},
      footer = {"", "Example:", "  kiln fire \\", ".blue"})
  static final class Fire {
    @Parameters(paramLabel = "PLATE", description = "Which one.")
    String plate = "";

    @Option(names = "--hours", paramLabel = "H", description = "How long; 8 if not given.")
    double hours;

    @Option(names = "--dry", description = "Without glaze.")
    boolean dry;

    @Option(names = "--hidden", hidden = true)
    boolean hidden;
  }

  @Command(name = "secret", hidden = true, description = "Nobody's business.")
  static final class Secret {}

  private static String page() {
    return ManualPage.of(new CommandLine(new Kiln()).getCommandSpec(), "1.2");
  }

  @Test
  void page_hasEveryShownCommandAndOption_andNoHiddenOne() {
    assertThat(page())
        .contains(".TH \"KILN\" \"1\" \"\" \"kiln 1.2\"")
        .contains("kiln \\- Fires plates.")
        .contains(".SS \"kiln fire\"\n.PP\nFires one plate, 100% evenly.")
        .contains("kiln fire [\\-\\-dry] [\\-\\-hours=H] PLATE")
        .contains("\\fB\\-\\-hours H\\fR\nHow long; 8 if not given.")
        .contains("\\fB\\-\\-dry\\fR\nWithout glaze.")
        .contains("\\fBPLATE\\fR\nWhich one.")
        .doesNotContain("secret", "hidden");
  }

  @Test
  void wordsThatRoffWouldObey_areShown() {
    assertThat(page()).contains("  kiln fire \\e\n\\&.blue\n.fi");
  }

  @Test
  void page_isWithoutWarningsInGroff_andShowsWhatWasWritten() throws Exception {
    Tool.Answer shown =
        Tool.find("groff").runOn(page(), "-man", "-ww", "-K", "utf8", "-T", "utf8", "-P", "-c");
    assertThat(shown.code()).isZero();
    assertThat(shown.text()).contains("kiln fire \\").contains(".blue").doesNotContain("warning");
  }
}
