package meltkeeper.cli;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import meltkeeper.cli.tune.JamNote;
import meltkeeper.cli.tune.JamNotes;
import meltkeeper.cli.tune.KnownJams;
import meltkeeper.cli.tune.Trial;
import meltkeeper.cli.tune.TuneAnswer;
import meltkeeper.config.Settings;
import meltkeeper.pipeline.Calling;
import meltkeeper.pipeline.Intake;
import meltkeeper.protocol.Decoder;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.Outlet;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.recording.RecordingLine;
import meltkeeper.source.recording.RecordingReader;
import meltkeeper.store.MemoryStore;

/**
 * Recordings with known jams through the very same pipeline, one for each limit of the jam watch,
 * side by side. For one thread.
 */
final class Tuning {

  private static final int COMMIT_EVERY_LINES = 10_000;

  private final Settings settings;
  private final List<Trial> trials;
  private final List<Intake> intakes = new ArrayList<>();
  private final KnownJams jams = new KnownJams();
  private long lines;

  /**
   * A tuning that tries those limits.
   *
   * @param wantedHours printing hours between two false alarms, at least one limit
   */
  Tuning(Settings settings, List<Double> wantedHours) {
    this.settings = settings;
    this.trials = wantedHours.stream().map(Trial::new).toList();
    for (int i = 0; i < trials.size(); i++) {
      Decoder decoders = Joints.decoders(settings);
      Intake intake =
          new Intake(
              i == 0 ? new Overheard(decoders, jams) : decoders,
              Joints.limits(settings),
              Joints.watching(settings, wantedHours.get(i)),
              new MemoryStore(),
              Calling.NOBODY);
      intake.onFinding(trials.get(i)::found);
      intakes.add(intake);
    }
  }

  /** A decoder whose readings somebody else hears, too. */
  private record Overheard(Decoder decoder, KnownJams hearer) implements Decoder {
    @Override
    public void decode(meltkeeper.protocol.Received received, Outlet outlet) {
      decoder.decode(
          received,
          new Outlet() {
            @Override
            public void reading(Reading reading) {
              hearer.take(reading);
              outlet.reading(reading);
            }

            @Override
            public void rejected(Rejected rejected) {
              outlet.rejected(rejected);
            }
          });
    }
  }

  /**
   * How the limits did.
   *
   * @throws FaultsException with every fault of the tables of jams
   */
  TuneAnswer run(List<Path> recordings) {
    List<Fault> faults = new ArrayList<>();
    List<List<JamNote>> notes =
        recordings.stream().map(recording -> notes(recording, faults)).toList();
    stopAt(faults);
    for (int i = 0; i < recordings.size(); i++) {
      read(recordings.get(i));
      jams.recorded(recordings.get(i).toString(), notes.get(i));
    }
    stopAt(jams.faults());
    return TuneAnswer.of(jams, trials, intakes.get(0).live(), lines);
  }

  private static void stopAt(List<Fault> faults) {
    if (!faults.isEmpty()) {
      throw new FaultsException(faults);
    }
  }

  private List<JamNote> notes(Path recording, List<Fault> faults) {
    Path table = JamNotes.beside(recording);
    try {
      return new JamNotes(table.toString(), settings.printers().keySet(), settings.zone(), faults)
          .read(Files.readString(table));
    } catch (NoSuchFileException e) {
      faults.add(JamNotes.missing(recording));
    } catch (CharacterCodingException e) {
      faults.add(
          Fault.of("", table, "text in UTF-8", "save the table as CSV in UTF-8 once more")
              .at(table.toString()));
    } catch (IOException e) {
      throw new FailedException("cannot read " + table + ": " + e.getMessage());
    }
    return List.of();
  }

  private void read(Path recording) {
    try {
      RecordingReader.read(recording, this::take);
      intakes.forEach(Intake::commit);
    } catch (IOException e) {
      throw new FailedException("cannot read " + recording + ": " + e.getMessage());
    }
  }

  private void take(String line) {
    lines++;
    RecordingLine.parse(
        line,
        received -> intakes.forEach(intake -> intake.accept(received)),
        rejected -> intakes.forEach(intake -> intake.rejected(rejected)));
    if (lines % COMMIT_EVERY_LINES == 0) {
      intakes.forEach(Intake::commit);
    }
  }
}
