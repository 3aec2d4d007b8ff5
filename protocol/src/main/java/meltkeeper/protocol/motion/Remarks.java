package meltkeeper.protocol.motion;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.gcode.Word;

/** What was assumed, unknown or broken in a file; bounded, whatever the file holds. */
final class Remarks {

  private static final int MOST_FAULTS = 20;
  private static final int MOST_KINDS = 1000;
  private static final int MOST_TOLD = 12;

  /** Codes that take no time, or none worth reckoning. */
  private static final Set<String> INSTANT =
      Set.of(
          "G17", "M73", "M82", "M83", "M105", "M106", "M107", "M110", "M115", "M117", "M17", "M18",
          "M84", "M221", "M207", "M208", "M900");

  private final Map<String, Integer> unknown = new TreeMap<>();
  private final TreeSet<String> notes = new TreeSet<>();
  private final List<Fault> faults = new ArrayList<>();
  private long broken;

  void note(String text) {
    notes.add(text);
  }

  /** A line that is left out; its place is the line's number. */
  void leaveOut(long lineNumber, Fault fault) {
    broken++;
    if (faults.size() < MOST_FAULTS) {
      faults.add(fault.at("line " + lineNumber));
    }
  }

  /** A code that nothing is known of here, unless it is known to take no time. */
  void passOver(Word word) {
    String code = word.toString();
    if (!INSTANT.contains(code) && unknown.size() < MOST_KINDS) {
      unknown.merge(code, 1, Integer::sum);
    }
  }

  List<Fault> faults() {
    return faults;
  }

  List<String> told() {
    List<String> told = new ArrayList<>(notes);
    if (broken > 0) {
      told.add(broken + " lines could not be read and were left out; the first: " + faults.get(0));
    }
    if (!unknown.isEmpty()) {
      told.add("took no time, being unknown here: " + unknownCodes());
    }
    return told;
  }

  private String unknownCodes() {
    String codes = String.join(", ", unknown.keySet().stream().limit(MOST_TOLD).toList());
    return unknown.size() > MOST_TOLD
        ? codes + " and " + (unknown.size() - MOST_TOLD) + " more"
        : codes;
  }
}
