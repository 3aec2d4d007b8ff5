package meltkeeper.protocol.gcode;

import java.util.Optional;
import java.util.OptionalDouble;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.NoticeKind;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Rejected.Reason;
import meltkeeper.protocol.Signal;

/**
 * Follows the command lines of one printer and tells what they do: filament, targets, fan, job.
 *
 * <p>Choices where the RepRap dialect (common practice, no source) is not of one mind:
 *
 * <ul>
 *   <li>M82 and M83, once given, rule the E words; until then G90 and G91 rule them too.
 *   <li>The E coordinate is the printer's, the totals are each hot end's.
 *   <li>A T word chooses the hot end; beside an M word it only says whose target is meant.
 *   <li>G10 and G11 retract and recover the length that M207 S told. Untold, they change nothing:
 *       what was fed, the high-water mark, is the same either way.
 *   <li>A job that was told as paused or idle is printing again when a move lays filament. A job of
 *       which nothing was told is left untold: its filament shows it.
 *   <li>The block delete switch is off: lines with a slash count.
 * </ul>
 *
 * <p>On one line modes come before moves, and stops last (RS274/NGC section 3.8, from memory). Not
 * safe for use by several threads.
 */
public final class Tracker {

  private static final double FULL_FAN = 255;

  private final Modes modes;
  private final FilamentAxis filament;
  private final LineCount lineCount;
  private Optional<JobState> job = Optional.empty();
  private int hotEnd;
  private boolean hasChosenHotEnd;
  private boolean streams;
  private double retractionLength;

  /** A printer just switched on. */
  public Tracker() {
    this(new FilamentAxis());
  }

  private Tracker(FilamentAxis filament) {
    this.filament = filament;
    this.modes = new Modes();
    this.lineCount = new LineCount();
  }

  /** The same printer after its controller started anew: all modes forgotten, totals going on. */
  public Tracker restarted() {
    filament.restart();
    return new Tracker(filament);
  }

  /** The hot end at work, 0 until a T word chooses. */
  public int hotEnd() {
    return hotEnd;
  }

  /** True once a T word chose the hot end. */
  public boolean hasChosenHotEnd() {
    return hasChosenHotEnd;
  }

  /**
   * True while the job comes over the wire: a move fed filament, and no job from the printer's own
   * storage was begun since.
   */
  public boolean streams() {
    return streams;
  }

  /** True once a line fed or retracted filament, before a restart or since. */
  public boolean hasFed() {
    return filament.hasFed();
  }

  /** Commanded filament of a hot end in millimetres, net of retractions, from 0 at the start. */
  public double filamentMillimetres(int index) {
    return filament.total(index);
  }

  /** The printer itself tells the state of its job. */
  public void jobIs(JobState state) {
    job = Optional.of(state);
  }

  /** The printer tells that a job from its own storage is at work. */
  public void printsFromStorage() {
    streams = false;
    job = Optional.of(JobState.PRINTING);
  }

  /**
   * The printer reports the coordinate of its filament for a hot end; nothing to us once a line
   * {@link #hasFed}, because the lines tell it sooner and exactly.
   *
   * @param index the hot end at work, 0 to 15
   */
  public void reportedFilament(int index, double millimetres, Effects effects) {
    if (hasFed()) {
      return;
    }
    if (Reading.isTotal(millimetres)) {
      filament.report(index, millimetres);
      effects.hotEnd(index, Signal.FILAMENT_COMMANDED, filament.total(index));
    } else {
      effects.hotEnd(index, Signal.FILAMENT_COMMANDED, millimetres);
    }
  }

  /** The printer wants the lines from this number on again; they will count once. */
  public void resendFrom(long lineNumber) {
    lineCount.resendFrom(lineNumber);
  }

  /** Carries out one line. */
  public void step(CommandLine line, Effects effects) {
    if (line.isEmpty() || !counts(line)) {
      return;
    }
    modes.set(line);
    chooseHotEnd(line, effects);
    for (Word word : line.words()) {
      if (word.letter() == 'M') {
        heatOrCool(word, line, effects);
      } else if (word.letter() == 'G') {
        prepareFilament(word, line, effects);
      }
    }
    if (modes.moves(line)) {
      move(line, effects);
    }
    for (Word word : line.words()) {
      if (word.letter() == 'M') {
        beginOrStop(word, line, effects);
      }
    }
  }

  private boolean counts(CommandLine line) {
    if (line.calls('M', 110)) {
      OptionalDouble number = line.number('N');
      lineCount.reset(
          number.isPresent() ? (long) number.getAsDouble() : line.lineNumber().orElse(-1));
      return true;
    }
    return line.lineNumber().isEmpty() || lineCount.counts(line.lineNumber().getAsLong());
  }

  private void chooseHotEnd(CommandLine line, Effects effects) {
    OptionalDouble chosen = line.number('T');
    if (chosen.isEmpty() || line.has('M')) {
      return;
    }
    double index = chosen.getAsDouble();
    if (index >= 0 && index <= HotEnd.MAX_INDEX && index == Math.rint(index)) {
      hotEnd = (int) index;
      hasChosenHotEnd = true;
    } else {
      effects.rejected(
          new Rejected(
              Reason.OUT_OF_RANGE, "hot end T" + index + "; allowed: 0 to " + HotEnd.MAX_INDEX));
    }
  }

  private void heatOrCool(Word word, CommandLine line, Effects effects) {
    switch (word.tenths()) {
      case 1040, 1090 -> {
        OptionalDouble hold = line.number('S');
        OptionalDouble target = hold.isPresent() ? hold : line.number('R');
        int whose = (int) line.number('T').orElse(hotEnd);
        target.ifPresent(celsius -> effects.hotEnd(whose, Signal.HOT_END_TARGET, celsius));
      }
      case 1060 -> {
        if (line.number('P').orElse(0) == 0) {
          effects.printer(Signal.FAN, line.number('S').orElse(FULL_FAN) / FULL_FAN);
        }
      }
      case 1070 -> {
        if (line.number('P').orElse(0) == 0) {
          effects.printer(Signal.FAN, 0);
        }
      }
      case 2070 -> {
        double length = modes.millimetres(line.number('S').orElse(0));
        if (FilamentAxis.isPossible(length) && line.has('S')) {
          retractionLength = length;
        }
      }
      default -> {}
    }
  }

  private void prepareFilament(Word word, CommandLine line, Effects effects) {
    switch (word.tenths()) {
      case 920 -> {
        if (line.has('E') || !namesAxisOfThePlate(line)) {
          filament.rename(modes.millimetres(line.number('E').orElse(0)));
        }
      }
      case 100 -> {
        boolean setsCoordinates = line.has('L') || line.has('P');
        if (!setsCoordinates && retractionLength > 0) {
          tellWhereFilamentBegins(effects);
          filament.retract(hotEnd, retractionLength);
          tellFilament(effects);
        }
      }
      case 110 -> {
        if (retractionLength > 0) {
          filament.recover(hotEnd);
          tellFilament(effects);
        }
      }
      default -> {}
    }
  }

  private void move(CommandLine line, Effects effects) {
    OptionalDouble e = line.number('E');
    if (e.isEmpty()) {
      return;
    }
    double millimetres = modes.millimetres(e.getAsDouble());
    double fed = modes.filamentIsRelative() ? millimetres : filament.lengthTo(millimetres);
    if (!FilamentAxis.isPossible(fed)) {
      effects.rejected(
          new Rejected(
              Reason.OUT_OF_RANGE,
              "a feed of " + fed + " mm; allowed: at most " + FilamentAxis.LONGEST_FEED));
      return;
    }
    tellWhereFilamentBegins(effects);
    filament.feed(hotEnd, fed);
    streams |= fed > 0;
    boolean laysFilament = fed > 0 && (line.has('X') || line.has('Y'));
    if (laysFilament && job.isPresent() && job.get() != JobState.PRINTING) {
      tellJob(JobState.PRINTING, effects);
    }
    tellFilament(effects);
  }

  private void beginOrStop(Word word, CommandLine line, Effects effects) {
    switch (word.tenths()) {
      case 0, 10, 250 -> tellJob(JobState.PAUSED, effects);
      case 240 -> {
        streams = false;
        tellJob(JobState.PRINTING, effects);
      }
      case 20 -> end(effects);
      case 300 -> {
        // Behind M30 a name may stand: then it removes a file, and no job ends.
        if (line.text().isEmpty()) {
          end(effects);
        }
      }
      case 180, 840 -> {
        boolean isLater = line.has('S');
        boolean isForSomeAxes = namesAxisOfThePlate(line) || line.has('E');
        if (job.isPresent() && !isLater && !isForSomeAxes) {
          end(effects);
        }
      }
      case 730 ->
          line.number('P').ifPresent(percent -> effects.printer(Signal.PROGRESS, percent / 100));
      case 6000 -> effects.notice(NoticeKind.FILAMENT_CHANGE, "a change of filament is asked for");
      default -> {}
    }
  }

  private static boolean namesAxisOfThePlate(CommandLine line) {
    return line.has('X') || line.has('Y') || line.has('Z');
  }

  private void end(Effects effects) {
    streams = false;
    tellJob(JobState.IDLE, effects);
  }

  private void tellJob(JobState state, Effects effects) {
    job = Optional.of(state);
    effects.job(state);
  }

  private void tellWhereFilamentBegins(Effects effects) {
    if (filament.beginsTelling(hotEnd)) {
      tellFilament(effects);
    }
  }

  private void tellFilament(Effects effects) {
    effects.hotEnd(hotEnd, Signal.FILAMENT_COMMANDED, filament.total(hotEnd));
  }
}
