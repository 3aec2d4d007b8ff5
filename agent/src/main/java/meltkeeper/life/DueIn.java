package meltkeeper.life;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import meltkeeper.part.Exposure;

/** How old a part is, and how long until it is due at the shop's own duty. */
public final class DueIn {

  private DueIn() {}

  /**
   * Hours until the part reaches an age, at least 0; spread, because the halving interval that
   * turns hours into age is not known exactly.
   *
   * @param age reference hours
   * @param dutyPerHour the hot time that an average hour by the clock brings
   */
  public static Estimate hours(
      Posterior posterior, PartLife part, double age, Exposure dutyPerHour) {
    return estimate(
        posterior,
        row -> Math.max(0, age - ageNow(row.ageing(), part)) / row.ageing().hours(dutyPerHour));
  }

  /** Reference hours that a part has aged. */
  public static Estimate age(Posterior posterior, PartLife part) {
    return estimate(posterior, row -> ageNow(row.ageing(), part));
  }

  private static double ageNow(Ageing ageing, PartLife part) {
    PastBelief past = PastBelief.of(part);
    double sum = 0;
    for (int k = 0; k < past.size(); k++) {
      sum += past.weight(k) * ageing.age(part, ageing.pastHours(part.past(), past.hours(k)));
    }
    return sum;
  }

  private record Weighted(double value, double weight) {}

  private static Estimate estimate(Posterior posterior, ToDoubleFunction<Row> quantity) {
    List<Weighted> values = new ArrayList<>();
    double mean = 0;
    for (int r = 0; r < posterior.rows().size(); r++) {
      double value = quantity.applyAsDouble(posterior.rows().get(r));
      values.add(new Weighted(value, posterior.weight(r)));
      mean += posterior.weight(r) * value;
    }
    values.sort(Comparator.comparingDouble(Weighted::value));
    return new Estimate(mean, at(values, 0.05), at(values, 0.5), at(values, 0.95));
  }

  private static double at(List<Weighted> sorted, double share) {
    double sum = 0;
    for (Weighted one : sorted) {
      sum += one.weight();
      if (sum >= share) {
        return one.value();
      }
    }
    return sorted.get(sorted.size() - 1).value();
  }
}
