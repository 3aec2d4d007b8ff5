package meltkeeper.life;

import java.util.function.DoubleUnaryOperator;

/** R(t), on the scale −log(−log R), a straight line in log life. */
record SurvivalMeasure(double hours) implements Measure {

  @Override
  public DoubleUnaryOperator on(Row row) {
    double shift = row.shape() * Math.log(hours);
    return logLife -> row.shape() * logLife - shift;
  }

  @Override
  public double value(double rising) {
    return Math.exp(-Math.exp(-rising));
  }
}
