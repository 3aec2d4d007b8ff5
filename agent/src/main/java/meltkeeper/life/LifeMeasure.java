package meltkeeper.life;

import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;

/** A life in hours: the characteristic life times a factor that shape decides. */
record LifeMeasure(ToDoubleFunction<Row> logFactor) implements Measure {

  @Override
  public DoubleUnaryOperator on(Row row) {
    double shift = logFactor.applyAsDouble(row);
    return logLife -> logLife + shift;
  }

  @Override
  public double value(double rising) {
    return Math.exp(rising);
  }
}
