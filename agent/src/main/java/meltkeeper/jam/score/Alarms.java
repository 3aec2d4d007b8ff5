package meltkeeper.jam.score;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;

/**
 * Rising edges of one hot end's alarm; those within half an hour of the one before belong to it
 * (our own rule). A fault's alarm counts though a false one came shortly before. Mutable.
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

  /** Alarms at times that count, merged. */
  public int count(DoublePredicate counts) {
    int count = 0;
    double last = Double.NEGATIVE_INFINITY;
    for (double edge : edges) {
      if (counts.test(edge)) {
        count += edge - last > MERGED_SECONDS ? 1 : 0;
        last = edge;
      }
    }
    return count;
  }

  /** Alarms before that time, merged. */
  public int before(double seconds) {
    return count(edge -> edge < seconds);
  }

  /** The first alarm at or after that time. */
  public OptionalDouble firstFrom(double seconds) {
    return edges.stream().mapToDouble(edge -> edge).filter(edge -> edge >= seconds).findFirst();
  }
}
