package meltkeeper.cli.tune;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import meltkeeper.jam.score.Advice;
import meltkeeper.jam.score.Bounds;
import meltkeeper.jam.score.Call;
import meltkeeper.jam.score.LimitScore;
import meltkeeper.part.Moments;
import meltkeeper.pipeline.HotEndLive;
import meltkeeper.pipeline.Live;

/**
 * How limits of the jam watch did on recordings with known jams, in the shape that is promised to
 * other programs.
 *
 * @param printingHours outside of jams, in which false alarms are counted
 * @param blindHours printing in which the watch had too little to go by
 * @param limits tried, from restless to quiet
 * @param lines read
 * @param rejected by reason, only those that happened
 */
public record TuneAnswer(
    double printingHours,
    double blindHours,
    List<OfLimit> limits,
    List<OfJam> jams,
    Suggestion advice,
    long lines,
    SortedMap<String, Long> rejected) {

  /**
   * One limit.
   *
   * @param falseAlarmEveryHours the limit, as the configuration has it
   * @param leadMinutes of all jams, those without a warning being 0
   */
  public record OfLimit(
      double falseAlarmEveryHours,
      int knownJams,
      int warnedBeforeStall,
      @JsonProperty("called_within_30_seconds") int calledAtOnce,
      @JsonProperty("called_within_5_minutes") int calledSoon,
      Lead leadMinutes,
      int falseAlarms,
      @JsonProperty("false_alarms_per_1000_hours") Rate falseAlarmRate) {}

  /** Quantiles; absent without jams. */
  public record Lead(OptionalDouble p10, OptionalDouble p50) {}

  /** A rate with its exact 95 % bounds. */
  public record Rate(double rate, double low, double high) {}

  /**
   * One known jam.
   *
   * @param stalled up to when an alarm is a warning
   * @param stallShown true when the recording showed the stall, false when only the note tells it
   * @param alarms one for each limit
   */
  public record OfJam(
      String printer,
      int hotEnd,
      Instant stalled,
      boolean stallShown,
      String note,
      List<OfAlarm> alarms) {}

  /**
   * The first alarm of a jam at one limit.
   *
   * @param secondsAfterStop of the flow, below 0 when it came before; absent when none came
   */
  public record OfAlarm(
      double falseAlarmEveryHours, OptionalDouble leadMinutes, OptionalDouble secondsAfterStop) {}

  /** The limit that fits; absent where the recordings cannot tell. */
  public record Suggestion(OptionalDouble falseAlarmEveryHours, String because) {}

  /**
   * The answer of trials on the same recordings.
   *
   * @param live what stands after the recordings
   */
  public static TuneAnswer of(KnownJams jams, List<Trial> trials, Live live, long lines) {
    List<LimitScore> scores = trials.stream().map(jams::score).toList();
    Advice advice = Advice.of(scores);
    SortedMap<String, Long> rejected = new TreeMap<>();
    live.rejected().forEach((reason, count) -> rejected.put(reason.label(), count));
    return new TuneAnswer(
        scores.get(0).printingHours(),
        live.hotEnds().stream().mapToLong(HotEndLive::blindNanos).sum() / 3600e9,
        scores.stream().map(TuneAnswer::limit).toList(),
        jams(jams.known(), scores),
        new Suggestion(advice.wantedHours(), advice.because()),
        lines,
        rejected);
  }

  private static OfLimit limit(LimitScore score) {
    Bounds bounds = score.boundsPer1000Hours();
    return new OfLimit(
        score.wantedHours(),
        score.jams(),
        score.warned(),
        score.calledAtOnce(),
        score.calledSoon(),
        new Lead(score.leadMinutes(0.1), score.leadMinutes(0.5)),
        score.falseAlarms(),
        new Rate(score.falseAlarmsPer1000Hours(), bounds.low(), bounds.high()));
  }

  private static List<OfJam> jams(List<KnownJams.Known> known, List<LimitScore> scores) {
    List<OfJam> jams = new ArrayList<>();
    for (int i = 0; i < known.size(); i++) {
      KnownJams.Known jam = known.get(i);
      List<OfAlarm> alarms = new ArrayList<>();
      for (LimitScore score : scores) {
        alarms.add(alarm(score.wantedHours(), score.calls().get(i)));
      }
      jams.add(
          new OfJam(
              jam.note().hotEnd().printer(),
              jam.note().hotEnd().index(),
              Moments.instant(Math.round(jam.jam().stall() * 1e3) * 1_000_000L),
              jam.jam().wasShown(),
              jam.note().note(),
              List.copyOf(alarms)));
    }
    return jams;
  }

  private static OfAlarm alarm(double wantedHours, Call call) {
    return new OfAlarm(
        wantedHours,
        call.isWarned() ? OptionalDouble.of(call.leadMinutes()) : OptionalDouble.empty(),
        call.secondsAfterStop());
  }
}
