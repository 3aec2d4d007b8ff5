package meltkeeper.cli;

import java.io.PrintWriter;
import meltkeeper.cli.manual.ManualCommand;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;
import picocli.CommandLine.ScopeType;

/** The command {@code meltkeeper}. */
@Command(
    name = "meltkeeper",
    versionProvider = Version.class,
    mixinStandardHelpOptions = true,
    scope = ScopeType.INHERIT,
    sortOptions = false,
    synopsisSubcommandLabel = "COMMAND",
    usageHelpAutoWidth = true,
    description = "Keeps a print shop's hot ends extruding: hours on each part, by temperature.",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {"0:done", "1:failed", "2:bad usage or configuration"},
    footer = {
      "",
      "Begin with:   meltkeeper demo --for 2m",
      "Then:         meltkeeper check --config meltkeeper.yaml"
    },
    subcommands = {HelpCommand.class, AutoComplete.GenerateCompletion.class, ManualCommand.class})
public final class Main {

  private Main() {}

  /** Runs one command and ends the process with its exit code. */
  public static void main(String[] args) {
    System.exit(
        run(
            new PrintWriter(System.out, true, java.nio.charset.StandardCharsets.UTF_8),
            new PrintWriter(System.err, true, java.nio.charset.StandardCharsets.UTF_8),
            args));
  }

  /** Runs one command; answers go to {@code out}, complaints to {@code err}. */
  static int run(PrintWriter out, PrintWriter err, String... args) {
    CommandLine line =
        new CommandLine(new Main())
            .addSubcommand(new RunCommand())
            .addSubcommand(new DemoCommand())
            .addSubcommand(new CheckCommand())
            .addSubcommand(new ListenCommand())
            .addSubcommand(new DoctorCommand())
            .addSubcommand(new SelfTestCommand())
            .addSubcommand(new RecordCommand())
            .addSubcommand(new ReplayCommand())
            .addSubcommand(PartCommand.line(OpenDesk::of))
            .addSubcommand(new LifeCommand(OpenDesk::of))
            .addSubcommand(new RiskCommand(OpenDesk::of))
            .addSubcommand(new ReportCommand(OpenDesk::of))
            .addSubcommand(AlertCommand.line(OpenDesk::of))
            .addSubcommand(new BackupCommand())
            .addSubcommand(new RestoreCommand())
            .addSubcommand(new TokenCommand());
    line.setOut(out);
    line.setErr(err);
    line.setExecutionExceptionHandler(new Complaints());
    line.setParameterExceptionHandler(new UsageComplaints());
    return line.execute(args);
  }
}
