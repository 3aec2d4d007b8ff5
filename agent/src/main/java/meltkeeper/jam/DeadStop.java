package meltkeeper.jam;

/**
 * The fast rule: filament is asked for and does not move. It adds up a third of what should move
 * less what moves, so that a full stop counts at once and a partial one does not; errors of
 * counting stay below a pulse and never add up. Mutable.
 */
final class DeadStop {

  private static final double SHARE = 0.35;
  private static final double LEAST_LIMIT = 5;
  private static final double MOST = 1.5;

  private double missing;
  private double limit = LEAST_LIMIT;

  void take(double expected, double seen, double pulse, double typicalStep, double spread) {
    limit =
        Math.max(Math.max(LEAST_LIMIT, 2 * pulse), Math.max(SHARE * 1.5 * typicalStep, 3 * spread));
    missing = Math.min(MOST * limit, Math.max(0, missing + SHARE * expected - seen));
  }

  double evidence() {
    return missing / limit;
  }

  boolean isCalm() {
    return missing < 0.5 * limit;
  }

  void rearm() {
    missing = 0;
  }

  void keep(Memory memory) {
    missing = memory.number("missing", missing);
    limit = memory.number("limit", limit);
  }
}
