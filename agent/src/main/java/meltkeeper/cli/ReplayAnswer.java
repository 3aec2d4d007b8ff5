package meltkeeper.cli;

import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import meltkeeper.desk.TallyAnswer;
import meltkeeper.pipeline.HotEndLive;
import meltkeeper.pipeline.Live;
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
  record Printer(SortedMap<String, TallyAnswer> hotEnds) {}

  static ReplayAnswer of(Live live, long lines) {
    SortedMap<String, Printer> printers = new TreeMap<>();
    for (HotEndLive hotEnd : live.hotEnds()) {
      printers
          .computeIfAbsent(hotEnd.hotEnd().printer(), name -> new Printer(new TreeMap<>()))
          .hotEnds()
          .put(String.valueOf(hotEnd.hotEnd().index()), TallyAnswer.of(hotEnd.total()));
    }
    SortedMap<String, Long> rejected = new TreeMap<>();
    for (Map.Entry<Rejected.Reason, Long> entry : live.rejected().entrySet()) {
      rejected.put(entry.getKey().label(), entry.getValue());
    }
    return new ReplayAnswer(printers, lines, rejected);
  }
}
