package meltkeeper.life;

import java.util.Optional;
import meltkeeper.part.Exposure;
import meltkeeper.part.PriorPast;

/**
 * One opinion of how heat, cleaning and idling age a part.
 *
 * <p>Virtual age is Kijima's type II (Kijima 1989, J. Appl. Prob. 26, 89, from memory): a cleaning
 * multiplies the whole age by 1 − r.
 *
 * @param atCelsius the reference temperature
 * @param halvingKelvin the halving interval, above 0
 * @param cleaningShift what is added to the log odds of every believed r
 * @param idleFactor how much faster than feeding hours idle hours age
 */
record Ageing(double atCelsius, double halvingKelvin, double cleaningShift, double idleFactor) {

  static Ageing byHeatAlone(double atCelsius, double halvingKelvin) {
    return new Ageing(atCelsius, halvingKelvin, 0, 1);
  }

  double rate(double celsius) {
    return Thermal.halvingRate(celsius, atCelsius, halvingKelvin);
  }

  double hours(Exposure hot) {
    return hot.weightedHours(this::rate);
  }

  double hours(Spell spell) {
    double all = hours(spell.hot());
    return idleFactor == 1 ? all : all + (idleFactor - 1) * hours(spell.idle());
  }

  /** r as this opinion has it. */
  double restores(double believed) {
    return restored(believed, cleaningShift);
  }

  /** A believed share with a shift of its log odds; sure beliefs of 0 and 1 stay. */
  static double restored(double believed, double shift) {
    return believed / (believed + (1 - believed) * Math.exp(-shift));
  }

  /** Reference hours of a past of so many clock hours. */
  double pastHours(Optional<PriorPast> past, double clockHours) {
    return past.map(p -> clockHours * rate(p.celsius())).orElse(0.0);
  }

  /** Virtual age at the end of what is in view, reference hours. */
  double age(PartLife part, double pastReferenceHours) {
    double age = pastReferenceHours;
    for (Spell spell : part.spells()) {
      age = age * (1 - restores(spell.restoredBefore())) + hours(spell);
    }
    return age;
  }

  /** Takes a failure: virtual age and dA/dt at it, reference hours and reference hours an hour. */
  interface Failure {
    void at(double age, double rate);
  }

  /** Tells the failures of a part in order of time. */
  void failures(PartLife part, double pastReferenceHours, Failure failure) {
    double age = pastReferenceHours;
    for (Spell spell : part.spells()) {
      double hours = hours(spell);
      age = age * (1 - restores(spell.restoredBefore())) + hours;
      if (spell.failed()) {
        double clockHours = spell.hot().hotHours();
        failure.at(age, clockHours > 0 && hours > 0 ? hours / clockHours : 1);
      }
    }
    if (part.hasFailed()) {
      failure.at(age, rateAtEnd(part));
    }
  }

  /**
   * dA/dt at the failure, reference hours an hour: at its last temperature, else the mean rate of
   * its hours in view.
   */
  double rateAtEnd(PartLife part) {
    if (part.lastCelsius().isPresent()) {
      return rate(part.lastCelsius().getAsDouble());
    }
    double clockHours = part.clockHours();
    double aged = part.spells().stream().mapToDouble(this::hours).sum();
    return clockHours > 0 && aged > 0 ? aged / clockHours : 1;
  }
}
