package meltkeeper.jam.sim;

/**
 * What a print asks of its feed, in steps: features of different speed, travels with retraction,
 * layers with a mix of their own and a pause between them. Mutable.
 */
final class Toolpath {

  private final Draw draw;
  private final double retraction;
  private final double retractShare;
  private final double usualSpeed;
  private final double spread;
  private final boolean steady;

  private double layerLeft;
  private double layerSpeed;
  private double left;
  private double speed;
  private double tug;
  private double travelLeft;
  private boolean drawnBack;

  Toolpath(Draw draw) {
    this.draw = draw;
    retraction = draw.chance(0.6) ? draw.between(0.4, 1) : draw.between(2, 6);
    retractShare = draw.between(0, 0.25);
    usualSpeed = draw.scaled(1.2, 6);
    spread = draw.between(0.15, 0.6);
    steady = draw.chance(0.1);
  }

  /** Length asked for in the next step of so many seconds; below 0 draws back. */
  double next(double dt) {
    if (tug != 0) {
      double most = 35 * dt;
      double part = Math.max(-most, Math.min(most, tug));
      tug -= part;
      return part;
    }
    if (travelLeft > 0) {
      travelLeft -= dt;
      if (travelLeft <= 0 && drawnBack) {
        drawnBack = false;
        tug = retraction;
      }
      return 0;
    }
    layerLeft -= dt;
    if (layerLeft <= 0) {
      layerLeft = draw.scaled(8, 150);
      layerSpeed = usualSpeed * Math.exp(draw.normal(0.2));
      travelLeft = draw.between(0.3, 2);
    }
    left -= dt;
    if (left <= 0) {
      left = draw.scaled(0.2, 8);
      speed = layerSpeed * (steady ? 1 : Math.exp(draw.normal(spread)));
      speed = Math.min(speed, 14);
      if (draw.chance(0.35)) {
        travelLeft = draw.between(0.05, 0.8);
      }
      if (draw.chance(retractShare)) {
        drawnBack = true;
        tug = -retraction;
        travelLeft = draw.between(0.1, 1);
      }
    }
    return speed * dt;
  }
}
