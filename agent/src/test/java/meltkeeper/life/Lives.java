package meltkeeper.life;

import meltkeeper.part.Because;
import meltkeeper.part.Belief;
import meltkeeper.part.Ending;
import meltkeeper.part.Exposure;

/** Lives in the shop's words. */
final class Lives {

  static final Belief LINER = new Belief(600, 0.35, 2.5, 0.4, 10, 3, 220);
  static final Ending JAMMED = new Ending.Failed(Because.JAM);
  static final Ending FITTED = new Ending.Censored(Ending.Why.STILL_FITTED);

  private Lives() {}

  static PartLife failed(String id, Exposure hot) {
    return PartLife.of(id, hot, JAMMED);
  }

  static PartLife alive(String id, Exposure hot) {
    return PartLife.of(id, hot, FITTED);
  }

  static Exposure at(double celsius, double hours) {
    return Exposure.of(celsius, hours);
  }
}
