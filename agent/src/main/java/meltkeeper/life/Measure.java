package meltkeeper.life;

import java.util.function.DoubleUnaryOperator;

/**
 * A quantity whose distribution over the posterior is asked for. On each row it is given on a scale
 * that rises with log life, as straight as can be, so that its quantiles come from the rows' own
 * distributions and not from counting nodes.
 */
interface Measure {

  /** On one row: log life to the rising scale. */
  DoubleUnaryOperator on(Row row);

  /** From the rising scale to the quantity itself. */
  double value(double rising);
}
