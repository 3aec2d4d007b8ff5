package meltkeeper.protocol.gcode;

import java.util.ArrayList;
import java.util.List;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.NoticeKind;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Signal;

/** What a tracker told, in words, one after another. */
final class Told implements Effects {
  final List<String> all = new ArrayList<>();

  /** Steps a tracker through lines, and notes what it tells. */
  void step(Tracker tracker, String... lines) {
    for (String line : lines) {
      tracker.step(CommandLineTest.line(line), this);
    }
  }

  List<String> jobs() {
    return all.stream().filter(what -> what.startsWith("job")).toList();
  }

  @Override
  public void job(JobState state) {
    all.add("job " + state);
  }

  @Override
  public void notice(NoticeKind kind, String text) {
    all.add("notice " + kind);
  }

  @Override
  public void printer(Signal signal, double number) {
    all.add(signal.label() + " " + number);
  }

  @Override
  public void hotEnd(int hotEnd, Signal signal, double number) {
    String name = signal == Signal.FILAMENT_COMMANDED ? "filament" : "target";
    all.add(name + " " + hotEnd + " " + number);
  }

  @Override
  public void rejected(Rejected why) {
    all.add("rejected " + why.reason() + " " + why.detail());
  }
}
