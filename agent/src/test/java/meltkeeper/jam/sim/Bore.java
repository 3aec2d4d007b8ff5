package meltkeeper.jam.sim;

/**
 * Gear, guide and bore: how much of a move gets through. The gear pushes up to its grip; melt needs
 * force by a power law of speed and bore (a model, from common practice), friction and tension add
 * to it. Grip and load fluctuate with the gear's turn. Mutable.
 */
final class Bore {

  private final Draw draw;
  private final Fault fault;
  private final double index;
  private final double cleanLoad;
  private final double fullSeconds;
  private final double grindLength;
  private final double grindShare;
  private final double give;
  private final double spoolTurn;
  private final Wander roughness;
  private final Wander stick;

  private double since = -1;
  private double slipped;
  private double given;
  private double turned;
  private double extra;
  private double load;

  Bore(Draw draw, Fault fault) {
    this.draw = draw;
    this.fault = fault;
    index = draw.between(0.3, 1);
    cleanLoad = draw.between(0.15, 0.5);
    fullSeconds =
        switch (fault) {
          case CLOG -> draw.scaled(600, 21_600);
          case HEAT_CREEP -> draw.scaled(300, 3600);
          case TANGLE -> draw.scaled(10, 300);
          default -> 1;
        };
    grindLength = draw.between(10, 30);
    grindShare = draw.between(0.03, 0.15);
    give = draw.between(1, 5);
    spoolTurn = draw.between(300, 700);
    roughness = new Wander(0.05, 3);
    stick = new Wander(0.15, 40);
  }

  void beginOnce() {
    since = Math.max(0, since);
  }

  double fullSeconds() {
    return fullSeconds;
  }

  /** The length, mm, that goes through of a move of that length forward at that speed, mm/s. */
  double through(double asked, double speed, double dt) {
    roughness.step(dt, draw);
    stick.step(dt, draw);
    if (since < 0) {
      load = cleanLoad * Math.pow(speed / 5, index) * (1 + roughness.value());
      return asked;
    }
    since += dt;
    turned += asked;
    double grip = 1 + roughness.value();
    double flowLoad = cleanLoad * Math.pow(Math.max(0.01, speed) / 5, index);
    switch (fault) {
      case CLOG -> flowLoad *= pressure(Math.max(1e-3, 1 - since / fullSeconds), index);
      case HEAT_CREEP ->
          extra = Math.max(0, Math.pow(since / fullSeconds, 2) * (1 + 2 * stick.value()));
      case TANGLE ->
          extra =
              Math.pow(since / fullSeconds, 2)
                  + 0.3
                      * Math.max(0, Math.sin(2 * Math.PI * turned / spoolTurn))
                      * since
                      / fullSeconds;
      case GRINDING -> grip *= Math.exp(-slipped / grindLength);
      case BLOCK, RUNOUT, NONE -> {}
    }
    double left = Math.max(0, grip - extra);
    double share = share(left, flowLoad, index);
    load = Math.min(grip, flowLoad + extra);
    double moved = asked * share;
    if (fault == Fault.GRINDING) {
      moved = Math.min(moved, asked * (1 - grindShare * draw.between(0.3, 1.7)));
    }
    if (fault == Fault.BLOCK) {
      moved = Math.min(moved, Math.max(0, give - given));
      given += moved;
      load = grip;
    }
    slipped += asked - moved;
    return moved;
  }

  /**
   * How many times the pressure of a clean bore it takes to press the same through one whose radius
   * is that share of it: the flow of a power-law melt through a tube.
   */
  static double pressure(double radius, double index) {
    return Math.pow(radius, -(3 * index + 1));
  }

  /** The share of a move that a grip presses through against that load; both in one unit. */
  static double share(double grip, double load, double index) {
    return Math.min(1, Math.pow(grip / load, 1 / index));
  }

  /** A retraction while the tip is soft: it swells and sticks more. */
  void retracted() {
    if (since >= 0 && fault == Fault.HEAT_CREEP) {
      since += 0.002 * fullSeconds;
    }
  }

  double load() {
    return load;
  }
}
