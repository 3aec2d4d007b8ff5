package meltkeeper.cli;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import meltkeeper.desk.TallyAnswer;
import meltkeeper.jam.Finding;
import meltkeeper.jam.Level;
import meltkeeper.part.Moments;
import meltkeeper.pipeline.HotEndLive;
import meltkeeper.pipeline.Live;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Rejected;

/**
 * What a replay credited, in the shape that is promised to other programs.
 *
 * @param lines read
 * @param rejected by reason, only those that happened
 */
record ReplayAnswer(
    SortedMap<String, Printer> printers, long lines, SortedMap<String, Long> rejected) {

  /** A printer's hot ends by index. */
  record Printer(SortedMap<String, OfHotEnd> hotEnds) {}

  /**
   * One hot end.
   *
   * @param blindSeconds printing time in which too little was told for the jam watch to say
   * @param warnings each change of the jam watch between narrowing, stalled and clear, in order
   */
  record OfHotEnd(
      @JsonUnwrapped TallyAnswer total, BigDecimal blindSeconds, List<Warning> warnings) {}

  /**
   * A change of level.
   *
   * @param at the reading's own time
   * @param level narrowing, stalled or clear
   * @param detector that spoke loudest
   * @param evidence as a fraction of its limit
   */
  record Warning(Instant at, String level, String detector, double evidence, String because) {

    static Warning of(Finding finding) {
      return new Warning(
          Moments.instant(finding.atNanos()),
          (finding.level() == Level.BLIND ? Level.CLEAR : finding.level()).word(),
          finding.detector().word(),
          finding.evidence(),
          finding.because());
    }
  }

  static ReplayAnswer of(Live live, List<Finding> findings, long lines) {
    SortedMap<String, Printer> printers = new TreeMap<>();
    for (HotEndLive hotEnd : live.hotEnds()) {
      printers
          .computeIfAbsent(hotEnd.hotEnd().printer(), name -> new Printer(new TreeMap<>()))
          .hotEnds()
          .put(
              String.valueOf(hotEnd.hotEnd().index()),
              new OfHotEnd(
                  TallyAnswer.of(hotEnd.total()),
                  TallyAnswer.seconds(hotEnd.blindNanos()),
                  warnings(findings, hotEnd.hotEnd())));
    }
    SortedMap<String, Long> rejected = new TreeMap<>();
    for (Map.Entry<Rejected.Reason, Long> entry : live.rejected().entrySet()) {
      rejected.put(entry.getKey().label(), entry.getValue());
    }
    return new ReplayAnswer(printers, lines, rejected);
  }

  /** Jams and their ends; time without enough signals is told as blind seconds. */
  private static List<Warning> warnings(List<Finding> findings, HotEnd hotEnd) {
    List<Warning> warnings = new ArrayList<>();
    boolean jam = false;
    for (Finding finding : findings) {
      if (finding.hotEnd().equals(hotEnd)) {
        boolean isJam = finding.level().isJam();
        if (isJam || jam) {
          warnings.add(Warning.of(finding));
        }
        jam = isJam;
      }
    }
    return warnings;
  }
}
