package meltkeeper.protocol.gcode;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import meltkeeper.protocol.HotEnd;

/** The hot ends of one printer, and which of them it has shown so far; the first one always. */
final class HotEnds {

  private final List<HotEnd> all = new ArrayList<>();
  private final BitSet shown = new BitSet();

  HotEnds(String printer) {
    for (int index = 0; index <= HotEnd.MAX_INDEX; index++) {
      all.add(new HotEnd(printer, index));
    }
    shown.set(0);
  }

  static boolean isPossible(int index) {
    return index >= 0 && index <= HotEnd.MAX_INDEX;
  }

  HotEnd get(int index) {
    return all.get(index);
  }

  void show(int index) {
    shown.set(index);
  }

  int[] shown() {
    return shown.stream().toArray();
  }
}
