package meltkeeper.protocol.gcode;

import meltkeeper.protocol.JobState;
import meltkeeper.protocol.NoticeKind;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Signal;

/** Takes what a command line does to a printer. Numbers are not yet checked against their range. */
public interface Effects {

  /** The job begins, stops or goes on. */
  void job(JobState state);

  /** Something that a person should know. */
  void notice(NoticeKind kind, String text);

  /** A value of the printer as a whole: progress and fan, 0 to 1. */
  void printer(Signal signal, double number);

  /**
   * A value of one hot end: filament in millimetres, target in degrees Celsius.
   *
   * @param hotEnd counted from 0, not yet checked against its range
   */
  void hotEnd(int hotEnd, Signal signal, double number);

  /** Something on the line that cannot be. */
  void rejected(Rejected rejected);
}
