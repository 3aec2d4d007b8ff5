package meltkeeper.protocol.gcode;

import meltkeeper.protocol.JobState;
import meltkeeper.protocol.NoticeKind;
import meltkeeper.protocol.Signal;
import meltkeeper.protocol.gcode.Report.Value;

/** What is known of one printer from both sides' lines so far, and what the next line adds. */
final class Dialogue {

  private final double fullDuty;
  private Tracker tracker = new Tracker();
  private int reportedHotEnd;

  Dialogue(double fullDuty) {
    this.fullDuty = fullDuty;
  }

  /** Takes a line to the printer. */
  void overhear(CommandScan scan, Effects effects) {
    scan.<Effects>fold(
        line -> {
          tracker.step(line, effects);
          return effects;
        },
        rejected -> {
          effects.rejected(rejected);
          return effects;
        });
  }

  /** Takes a line from the printer. */
  void hear(Report report, Effects effects) {
    report.accept(new Hearing(effects));
  }

  private int hotEndAtWork() {
    return tracker.hasChosenHotEnd() ? tracker.hotEnd() : reportedHotEnd;
  }

  private void tellJob(JobState state, Effects effects) {
    tracker.jobIs(state);
    effects.job(state);
  }

  private final class Hearing implements Report.Visitor<Effects> {

    private final Effects effects;

    Hearing(Effects effects) {
      this.effects = effects;
    }

    @Override
    public Effects visit(Report.Values report) {
      report.activeHotEnd().ifPresent(hotEnd -> reportedHotEnd = hotEnd);
      report.values().forEach(this::tell);
      report.rejected().forEach(effects::rejected);
      return effects;
    }

    private void tell(Value value) {
      int hotEnd = value.hotEnd().orElse(hotEndAtWork());
      switch (value.signal()) {
        case HEATER_DUTY -> effects.hotEnd(hotEnd, value.signal(), value.number() / fullDuty);
        case FILAMENT_COMMANDED -> tracker.reportedFilament(hotEnd, value.number(), effects);
        default -> effects.hotEnd(hotEnd, value.signal(), value.number());
      }
    }

    @Override
    public Effects visit(Report.StorageJob report) {
      tracker.printsFromStorage();
      effects.job(JobState.PRINTING);
      effects.printer(Signal.PROGRESS, (double) report.doneBytes() / report.totalBytes());
      return effects;
    }

    @Override
    public Effects visit(Report.NoStorageJob report) {
      // Of a job that comes over the wire the printer's storage knows nothing.
      if (!tracker.streams()) {
        tellJob(JobState.IDLE, effects);
      }
      return effects;
    }

    @Override
    public Effects visit(Report.Resend report) {
      tracker.resendFrom(report.lineNumber());
      return effects;
    }

    @Override
    public Effects visit(Report.Restart report) {
      tracker = tracker.restarted();
      reportedHotEnd = 0;
      tellJob(JobState.IDLE, effects);
      effects.notice(NoticeKind.RESTARTED, "the printer's controller started anew");
      return effects;
    }

    @Override
    public Effects visit(Report.Failure report) {
      effects.notice(Words.kindOf(report.text()), report.text());
      return effects;
    }

    @Override
    public Effects visit(Report.Action report) {
      Words.jobStateOf(report.words()).ifPresent(state -> tellJob(state, effects));
      effects.notice(Words.kindOfAction(report.words()), report.words());
      return effects;
    }

    @Override
    public Effects visit(Report.Unreadable report) {
      effects.rejected(report.rejected());
      return effects;
    }

    @Override
    public Effects visit(Report.Busy report) {
      return effects;
    }

    @Override
    public Effects visit(Report.UnknownCommand report) {
      return effects;
    }

    @Override
    public Effects visit(Report.Chatter report) {
      return effects;
    }
  }
}
