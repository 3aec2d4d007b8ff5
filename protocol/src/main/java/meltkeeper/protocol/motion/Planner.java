package meltkeeper.protocol.motion;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleConsumer;

/**
 * Finds how long each move takes. Moves wait until enough are known beyond them: from the last one
 * known, which must be able to stop, speeds are reckoned backward; then forward from the speed that
 * the machine has. So memory is twice the look-ahead, and the cost of a move does not depend on it.
 */
final class Planner {

  /** What happens between two moves without stopping the machine, such as a new target. */
  interface Mark {
    void happen();
  }

  /** So many between two moves are no print; they are not kept but carried out. */
  private static final int MOST_MARKS = 1000;

  private record Waiting(Move move, double entryLimit, List<Mark> before) {}

  private final int lookAhead;
  private final DoubleConsumer idleSeconds;
  private final DoubleConsumer layingSeconds;
  private final List<Waiting> waiting = new ArrayList<>();
  private final List<Mark> marks = new ArrayList<>();
  private double speed;

  /**
   * A machine at rest.
   *
   * @param idleSeconds takes the time of a move that lays nothing, in order
   * @param layingSeconds takes the time of one that lays filament
   */
  Planner(int lookAhead, DoubleConsumer idleSeconds, DoubleConsumer layingSeconds) {
    this.lookAhead = lookAhead;
    this.idleSeconds = idleSeconds;
    this.layingSeconds = layingSeconds;
  }

  /** Adds a move behind all others. */
  void add(Move move, double junctionDeviation) {
    double limit =
        waiting.isEmpty()
            ? 0
            : waiting.get(waiting.size() - 1).move().junctionSpeed(move, junctionDeviation);
    waiting.add(new Waiting(move, limit, List.copyOf(marks)));
    marks.clear();
    if (waiting.size() > 2 * lookAhead) {
      make(waiting.size() - lookAhead);
    }
  }

  /** Adds one of few things that happen once the moves before it are made. */
  void add(Mark mark) {
    if (waiting.isEmpty()) {
      mark.happen();
    } else {
      marks.add(mark);
      if (marks.size() == MOST_MARKS) {
        stop();
      }
    }
  }

  /** Makes all moves, and stops. */
  void stop() {
    make(waiting.size());
    speed = 0;
    marks.forEach(Mark::happen);
    marks.clear();
  }

  private void make(int count) {
    double[] entries = new double[waiting.size() + 1];
    for (int i = waiting.size() - 1; i > 0; i--) {
      Waiting one = waiting.get(i);
      entries[i] = Math.min(one.entryLimit(), one.move().reachable(entries[i + 1]));
    }
    for (int i = 0; i < count; i++) {
      Waiting one = waiting.get(i);
      one.before().forEach(Mark::happen);
      double exit = Math.min(entries[i + 1], one.move().reachable(speed));
      (one.move().lays() ? layingSeconds : idleSeconds).accept(one.move().seconds(speed, exit));
      speed = exit;
    }
    waiting.subList(0, count).clear();
  }
}
