package meltkeeper.protocol.gcode;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.NoticeKind;
import meltkeeper.protocol.Outlet;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Rejected.Reason;
import meltkeeper.protocol.Sample;
import meltkeeper.protocol.Signal;

/**
 * What one line said, gathered until it can be told in the order of {@link Signal}.
 *
 * <p>A word of the printer as a whole is told for every hot end that it has shown so far, because
 * each keeps its own account.
 */
final class Utterance implements Effects {

  private static final Comparator<Said> ORDER =
      Comparator.comparing(Said::signal).thenComparingInt(Said::hotEnd);

  private final Received received;
  private final HotEnds hotEnds;
  private final Map<Integer, Sample> samples = new HashMap<>();
  private final List<Said> said = new ArrayList<>(4);
  private final List<Rejected> rejected = new ArrayList<>(0);

  private record Said(Signal signal, Reading reading) {
    int hotEnd() {
      return reading.sample().hotEnd().index();
    }
  }

  Utterance(Received received, HotEnds hotEnds) {
    this.received = received;
    this.hotEnds = hotEnds;
  }

  @Override
  public void job(JobState state) {
    sayOfAll(Signal.JOB_STATE, sample -> new Reading.JobStatus(sample, state));
  }

  @Override
  public void notice(NoticeKind kind, String text) {
    sayOfAll(Signal.NOTICE, sample -> new Reading.Notice(sample, kind, text));
  }

  @Override
  public void printer(Signal signal, double number) {
    if (admits(signal, number)) {
      sayOfAll(signal, sample -> signal.reading(sample, number));
    }
  }

  @Override
  public void hotEnd(int hotEnd, Signal signal, double number) {
    if (!HotEnds.isPossible(hotEnd)) {
      rejected(
          new Rejected(
              Reason.OUT_OF_RANGE, "hot end " + hotEnd + "; allowed: 0 to " + HotEnd.MAX_INDEX));
    } else if (admits(signal, number)) {
      hotEnds.show(hotEnd);
      said.add(new Said(signal, signal.reading(sample(hotEnd), number)));
    }
  }

  @Override
  public void rejected(Rejected why) {
    rejected.add(why);
  }

  /** Tells everything: readings in order, then rejections. */
  void tell(Outlet outlet) {
    said.sort(ORDER);
    for (Said one : said) {
      outlet.reading(one.reading());
    }
    for (Rejected one : rejected) {
      outlet.rejected(one);
    }
  }

  private boolean admits(Signal signal, double number) {
    if (signal.admits(number)) {
      return true;
    }
    rejected(
        new Rejected(
            Reason.OUT_OF_RANGE, signal.label() + " " + number + "; allowed: " + signal.allowed()));
    return false;
  }

  private void sayOfAll(Signal signal, Function<Sample, Reading> reading) {
    for (int hotEnd : hotEnds.shown()) {
      said.add(new Said(signal, reading.apply(sample(hotEnd))));
    }
  }

  private Sample sample(int hotEnd) {
    return samples.computeIfAbsent(hotEnd, this::newSample);
  }

  private Sample newSample(int hotEnd) {
    Sample sample = Sample.arrived(hotEnds.get(hotEnd), received.arrival().steadyNanos());
    return received.retained() ? sample.asRetained() : sample;
  }
}
