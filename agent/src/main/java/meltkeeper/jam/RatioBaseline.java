package meltkeeper.jam;

/**
 * What share of the filament asked for an encoder shows when all is well: a gentle curve in the
 * speed, for whatever scale the encoder has. Learned from calm windows. Mutable.
 */
final class RatioBaseline {

  private static final int ENOUGH = 4;

  /** An encoder that counts both ways shows every retraction twice; its usual is learned slowly. */
  private static final int ENOUGH_WHEN_BLIND = 16;

  /** Slip by speed, per mm/s. */
  private static final double SLOPE_SPREAD = 0.004;

  /** How that slope changes, per (mm/s)². */
  private static final double BEND_SPREAD = 0.0004;

  /** From one material to another, as a share: common practice, no source. */
  private static final double MATERIAL_SPREAD = 0.25;

  private static final double LEAST_RATIO = 0.02;
  private static final double FORGETTING = 1.002;

  private final LinearFit line =
      new LinearFit(new double[] {1, 0, 0}, new double[] {3, SLOPE_SPREAD, BEND_SPREAD});
  private final double[] inputs = {1, 0, 0};
  private double usualSpeed;
  private int windows;
  private int enough = ENOUGH;

  boolean isKnown() {
    return windows >= enough;
  }

  double ratio(double speed) {
    look(speed);
    return Math.max(LEAST_RATIO, line.predict(inputs));
  }

  private void look(double speed) {
    inputs[1] = speed - usualSpeed;
    inputs[2] = inputs[1] * inputs[1];
  }

  /** Variance of that share, for what is not known of the line at that speed. */
  double uncertainty(double speed) {
    look(speed);
    return line.uncertainty(inputs);
  }

  double usualRatio() {
    return Math.max(LEAST_RATIO, line.coefficient(0));
  }

  void learn(double ratio, double speed, double spread, boolean blind) {
    if (windows == 0) {
      usualSpeed = speed;
      enough = blind ? ENOUGH_WHEN_BLIND : ENOUGH;
    }
    windows = Math.min(windows + 1, 1000);
    double residual = ratio - ratio(speed);
    double scale = usualRatio() * spread;
    double most = 3 * Math.sqrt(scale * scale + line.uncertainty(inputs));
    double held = isKnown() ? Math.max(-most, Math.min(most, residual)) : residual;
    double pull = blind && isKnown() && held > 0 ? held * 0.25 : held;
    line.learn(inputs, pull, Math.max(scale * scale, 1e-6));
    line.forget(FORGETTING, 0, 0);
  }

  /** Grows less sure, as when the material changes: the encoder's scale is still the same. */
  void unsettle() {
    line.forget(1, 0, Math.pow(MATERIAL_SPREAD * usualRatio(), 2));
  }

  void keep(Memory memory) {
    line.keep(memory.within("line"));
    usualSpeed = memory.number("usualSpeed", usualSpeed);
    windows = (int) memory.count("windows", windows);
    enough = (int) memory.count("enough", enough);
  }
}
