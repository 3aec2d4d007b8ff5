package meltkeeper.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import meltkeeper.cli.tune.TuneAnswer;
import meltkeeper.cli.tune.TuneText;
import meltkeeper.config.Settings;
import meltkeeper.desk.AnswerJson;
import meltkeeper.desk.TallyAnswer;
import meltkeeper.jam.Finding;
import meltkeeper.pipeline.Calling;
import meltkeeper.pipeline.Intake;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.recording.RecordingLine;
import meltkeeper.source.recording.RecordingReader;
import meltkeeper.store.MemoryStore;
import meltkeeper.store.Store;
import meltkeeper.store.sql.Stores;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Recordings through the very same pipeline. */
@Command(
    name = "replay",
    description = "Reads recordings through the same path as live telemetry, at full speed.")
final class ReplayCommand implements Callable<Integer> {

  private static final int COMMIT_EVERY_LINES = 10_000;

  @Mixin private ConfigFile config = new ConfigFile();

  @Option(names = "--json", description = "Print one JSON object.")
  private boolean json;

  @Option(
      names = "--store",
      description = {
        "Credit the ledger. The same recording is never credited twice;",
        "not while the agent runs on the same store."
      })
  private boolean credit;

  @Mixin private TuneOption tune = new TuneOption();

  @Parameters(
      arity = "1..*",
      paramLabel = "RECORDING",
      description = "Files made by 'record', compressed or not.")
  private List<Path> recordings = new ArrayList<>();

  @Spec private CommandSpec spec = CommandSpec.create();
  private final List<Finding> findings = new ArrayList<>();
  private long lines;

  @Override
  public Integer call() {
    Settings settings = config.settings();
    if (tune.isGiven()) {
      tune(settings);
      return 0;
    }
    try (Store store = credit ? Stores.open(settings.storeUrl()) : new MemoryStore()) {
      if (credit) {
        store.claim();
      }
      Intake intake =
          new Intake(
              Joints.decoders(settings),
              Joints.limits(settings),
              Joints.watching(settings),
              store,
              Calling.NOBODY);
      intake.onFinding(findings::add);
      for (Path recording : recordings) {
        replay(recording, intake, store);
      }
      print(ReplayAnswer.of(intake.live(), findings, lines));
    }
    return 0;
  }

  private void tune(Settings settings) {
    if (credit) {
      throw new FaultsException(
          List.of(
              Fault.of("--tune", "--store", "one of the two", "tuning credits nothing by itself")));
    }
    TuneAnswer answer = new Tuning(settings, tune.wantedHours(settings)).run(recordings);
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.println(AnswerJson.print(answer));
    } else {
      TuneText.print(answer, settings.zone(), out);
    }
  }

  private void replay(Path recording, Intake intake, Store store) {
    try {
      if (credit && store.hasRecording(RecordingReader.read(recording, line -> {}))) {
        err().println("meltkeeper: " + recording + " was credited before; passed over");
        return;
      }
      String digest = RecordingReader.read(recording, line -> take(line, intake));
      if (credit) {
        store.keepRecording(
            digest,
            recording.toString(),
            System.currentTimeMillis() * 1_000_000,
            intake.pendingAtTheEnd());
        intake.settled();
      } else {
        intake.commit();
      }
    } catch (IOException e) {
      throw new FailedException("cannot read " + recording + ": " + e.getMessage());
    }
  }

  private void take(String line, Intake intake) {
    lines++;
    RecordingLine.parse(line, intake::accept, intake::rejected);
    if (lines % COMMIT_EVERY_LINES == 0) {
      intake.commit();
    }
  }

  private PrintWriter err() {
    return spec.commandLine().getErr();
  }

  private void print(ReplayAnswer answer) {
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.println(AnswerJson.print(answer));
      return;
    }
    answer
        .printers()
        .forEach(
            (name, printer) ->
                printer
                    .hotEnds()
                    .forEach(
                        (index, tally) -> printHotEnd(out, name + " hot end " + index, tally)));
    out.printf("%d lines read%n", answer.lines());
    answer.rejected().forEach((reason, count) -> out.printf("%d %s%n", count, reason));
  }

  private static void printHotEnd(PrintWriter out, String name, ReplayAnswer.OfHotEnd hotEnd) {
    TallyAnswer tally = hotEnd.total();
    out.println(name);
    for (Map.Entry<String, java.math.BigDecimal> band : tally.hotSeconds().entrySet()) {
      out.printf("  %s °C  %12s s hot%n", band.getKey(), band.getValue());
    }
    out.printf(
        "  bridged %s s, unobserved %s s, idle %s s, printing %s s%n",
        tally.bridgedSeconds(),
        tally.unobservedSeconds(),
        tally.idleSeconds(),
        tally.printingSeconds());
    out.printf(
        "  filament asked for %s mm, seen %s mm%n",
        tally.filamentCommandedMm(), tally.filamentMeasuredMm());
    if (hotEnd.blindSeconds().signum() > 0) {
      out.printf("  jam watch blind for %s s of printing%n", hotEnd.blindSeconds());
    }
    for (ReplayAnswer.Warning warning : hotEnd.warnings()) {
      out.printf("  %s  %s: %s%n", warning.at(), warning.level(), warning.because());
    }
  }
}
