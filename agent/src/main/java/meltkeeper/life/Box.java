package meltkeeper.life;

import java.util.function.DoubleBinaryOperator;
import meltkeeper.part.Belief;

/**
 * The rectangle of log shape and halving interval that holds the posterior.
 *
 * <p>The belief alone reaches seven standard deviations. Shapes below 0.2 are left out unless the
 * belief itself lies there: no wear has them, and with them a mean life has no end.
 */
record Box(double shapeLow, double shapeHigh, double halvingLow, double halvingHigh) {

  private static final double REACH = 7;
  private static final double LOWEST_SHAPE = 0.2;

  /** What lies this far below the peak, in log density, carries less than a billionth. */
  static final double DEPTH = 20;

  private static final int CELLS = 17;
  private static final int PASSES = 10;

  static Box of(Belief belief) {
    double middle = Math.log(belief.shape());
    return new Box(
        Math.max(
            middle - REACH * belief.shapeSpread(),
            Math.min(Math.log(LOWEST_SHAPE), middle - 2 * belief.shapeSpread())),
        middle + REACH * belief.shapeSpread(),
        Belief.MIN_HALVING,
        belief.halving() + REACH * belief.halvingSpread());
  }

  /** The part of it that matters, found by looking ever closer. */
  Box around(DoubleBinaryOperator logDensity) {
    Box box = this;
    for (int pass = 0; pass < PASSES; pass++) {
      Box closer = box.closer(logDensity);
      boolean settled = closer.area() > 0.6 * box.area();
      box = closer;
      if (settled) {
        break;
      }
    }
    return box;
  }

  /** The smallest box that holds both. */
  Box and(Box other) {
    return new Box(
        Math.min(shapeLow, other.shapeLow),
        Math.max(shapeHigh, other.shapeHigh),
        Math.min(halvingLow, other.halvingLow),
        Math.max(halvingHigh, other.halvingHigh));
  }

  private double area() {
    return (shapeHigh - shapeLow) * (halvingHigh - halvingLow);
  }

  private Box closer(DoubleBinaryOperator logDensity) {
    double shapeStep = (shapeHigh - shapeLow) / CELLS;
    double halvingStep = (halvingHigh - halvingLow) / CELLS;
    double[][] heights = new double[CELLS][CELLS];
    double peak = Double.NEGATIVE_INFINITY;
    for (int j = 0; j < CELLS; j++) {
      for (int i = 0; i < CELLS; i++) {
        heights[i][j] =
            logDensity.applyAsDouble(
                shapeLow + (i + 0.5) * shapeStep, halvingLow + (j + 0.5) * halvingStep);
        peak = Math.max(peak, heights[i][j]);
      }
    }
    int firstI = CELLS;
    int lastI = 0;
    int firstJ = CELLS;
    int lastJ = 0;
    for (int i = 0; i < CELLS; i++) {
      for (int j = 0; j < CELLS; j++) {
        if (heights[i][j] >= peak - DEPTH) {
          firstI = Math.min(firstI, i);
          lastI = Math.max(lastI, i);
          firstJ = Math.min(firstJ, j);
          lastJ = Math.max(lastJ, j);
        }
      }
    }
    return new Box(
        Math.max(shapeLow, shapeLow + (firstI - 0.5) * shapeStep),
        Math.min(shapeHigh, shapeLow + (lastI + 1.5) * shapeStep),
        Math.max(halvingLow, halvingLow + (firstJ - 0.5) * halvingStep),
        Math.min(halvingHigh, halvingLow + (lastJ + 1.5) * halvingStep));
  }
}
