package meltkeeper.config;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import meltkeeper.protocol.Fault;

/** Gathers the faults of one file. For one thread. */
final class Faults {

  private record Placed(int line, Fault fault) {}

  private final String fileName;
  private final List<Placed> placed = new ArrayList<>();

  Faults(String fileName) {
    this.fileName = fileName;
  }

  /** Tells a fault whose key is the whole path. */
  void add(int line, Fault fault) {
    Placed added = new Placed(line, fault.at(fileName + ":" + line));
    if (!placed.contains(added)) {
      placed.add(added);
    }
  }

  /** The faults in the order of their lines. */
  List<Fault> inOrder() {
    return placed.stream()
        .sorted(Comparator.comparingInt(Placed::line))
        .map(Placed::fault)
        .toList();
  }
}
