package meltkeeper.cli.manual;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import picocli.CommandLine;
import picocli.CommandLine.Help;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/** One manual page for a command and everything below it. */
final class ManualPage {

  private static final Map<String, String> FILES = files();

  private final CommandSpec root;
  private final Roff roff;

  private ManualPage(CommandSpec root, String version) {
    this.root = root;
    this.roff = new Roff(root.name(), 1, (root.name() + " " + version).strip());
  }

  /** The page as roff text. */
  static String of(CommandSpec root, String version) {
    ManualPage page = new ManualPage(root, version);
    page.head();
    page.roff.section("COMMANDS");
    page.commandsOf(root);
    page.foot();
    return page.roff.toString();
  }

  private void head() {
    String what = words(root.usageMessage().description());
    roff.section("NAME").line(Roff.escaped(root.name()) + " \\- " + Roff.escaped(what));
    roff.section("SYNOPSIS").paragraph(synopsis(root));
    roff.section("OPTIONS");
    root.options().stream().filter(option -> !option.hidden()).forEach(this::option);
  }

  private void commandsOf(CommandSpec parent) {
    Set<CommandLine> commands = new LinkedHashSet<>(parent.subcommands().values());
    for (CommandLine line : commands) {
      CommandSpec command = line.getCommandSpec();
      if (!command.usageMessage().hidden()) {
        command(command);
        commandsOf(command);
      }
    }
  }

  private void command(CommandSpec command) {
    roff.subsection(command.qualifiedName());
    roff.paragraph(words(command.usageMessage().description()));
    roff.paragraph(synopsis(command));
    command.positionalParameters().stream()
        .filter(parameter -> !parameter.hidden())
        .forEach(this::parameter);
    command.options().stream()
        .filter(option -> !option.hidden() && !option.usageHelp() && !option.versionHelp())
        .forEach(this::option);
    List<String> footer =
        List.of(command.usageMessage().footer()).stream()
            .map(ManualPage::formatted)
            .dropWhile(String::isBlank)
            .toList();
    if (!footer.isEmpty()) {
      roff.verbatim(footer);
    }
  }

  private void option(OptionSpec option) {
    String names = String.join(", ", option.names());
    boolean takesValue = option.arity().max() > 0;
    roff.item(takesValue ? names + " " + option.paramLabel() : names, words(option.description()));
  }

  private void parameter(PositionalParamSpec parameter) {
    roff.item(parameter.paramLabel(), words(parameter.description()));
  }

  private void foot() {
    roff.section("FILES");
    FILES.forEach(roff::item);
    roff.section("EXIT STATUS");
    root.usageMessage().exitCodeList().forEach(roff::item);
    roff.section("CAUTIONS")
        .paragraph(
            "Printers left alone are a fire risk: the agent is no safety device and replaces no"
                + " smoke detector, thermal protection, fire code or electrician.");
  }

  private static String synopsis(CommandSpec command) {
    String text = new Help(command, Help.defaultColorScheme(Ansi.OFF)).synopsis(0);
    return text.strip().replaceAll("\\s+", " ");
  }

  private static String words(String... lines) {
    return formatted(String.join(" ", lines)).strip().replaceAll("\\s+", " ");
  }

  /** A description is a format: it writes a percent sign twice. */
  private static String formatted(String description) {
    return description.replace("%n", "\n").replace("%%", "%");
  }

  private static Map<String, String> files() {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("./meltkeeper.yaml", "The configuration, unless --config names another.");
    files.put("/etc/meltkeeper/meltkeeper.yaml", "The configuration of the installed agent.");
    files.put("/var/lib/meltkeeper", "What the installed agent keeps, its daily copies included.");
    return Collections.unmodifiableMap(files);
  }
}
