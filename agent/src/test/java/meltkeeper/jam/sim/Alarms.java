package meltkeeper.jam.sim;

import java.util.ArrayList;
import java.util.List;

/**
 * Rising edges of an alarm; those within half an hour of the one before belong to it (our own
 * rule). A fault's alarm counts though a false one came shortly before. Mutable.
 */
public final class Alarms {

  private static final double MERGED_SECONDS = 1800;

  private final List<Double> edges = new ArrayList<>();
  private boolean up;

  /** Tells how it stands at a time in seconds. */
  public void at(double seconds, boolean alarm) {
    if (alarm && !up) {
      edges.add(seconds);
    }
    up = alarm;
  }

  /** Alarms before that time, merged. */
  public int before(double seconds) {
    int count = 0;
    double last = Double.NEGATIVE_INFINITY;
    for (double edge : edges) {
      if (edge < seconds) {
        count += edge - last > MERGED_SECONDS ? 1 : 0;
        last = edge;
      }
    }
    return count;
  }

  /** The first alarm at or after that time; infinite for none. */
  public double firstFrom(double seconds) {
    return edges.stream()
        .filter(edge -> edge >= seconds)
        .findFirst()
        .orElse(Double.POSITIVE_INFINITY);
  }
}
