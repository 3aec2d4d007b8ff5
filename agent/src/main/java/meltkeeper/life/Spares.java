package meltkeeper.life;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import meltkeeper.part.Exposure;

/**
 * How many parts of a kind a shop will use up.
 *
 * @param mean number of swaps
 * @param enough the number that will do with the confidence asked for
 */
public record Spares(double mean, int enough) {

  private static final int RUNS = 4000;
  private static final int MOST_SWAPS = 10_000;

  /**
   * A place where a part of the kind is fitted.
   *
   * @param fitted the part that is there now
   * @param perDay the hot time that a day brings there
   */
  public record Place(PartLife fitted, Exposure perDay) {}

  /**
   * By renewal: thousands of futures, each with a life drawn from what is believed, common to all
   * places, since one ignorance of the life affects them all.
   *
   * @param replaceAt the age at which parts are swapped in good time, if the shop does
   * @param confidence 0 to 1
   * @param seed the same seed gives the same answer
   */
  public static Spares needed(
      Posterior posterior,
      List<Place> places,
      int days,
      OptionalDouble replaceAt,
      double confidence,
      long seed) {
    if (!(confidence > 0 && confidence < 1)) {
      throw new IllegalArgumentException("a confidence lies between 0 and 1, not " + confidence);
    }
    SplittableRandom random = new SplittableRandom(seed);
    double[] cumulative = new double[posterior.rows().size()];
    for (int r = 0; r < cumulative.length; r++) {
      cumulative[r] = posterior.weight(r) + (r > 0 ? cumulative[r - 1] : 0);
    }
    int[] swaps = new int[RUNS];
    for (int run = 0; run < RUNS; run++) {
      Row row = posterior.rows().get(drawn(random.nextDouble(), cumulative));
      Weibull life = new Weibull(drawnLife(random.nextDouble(), row), row.logShape());
      for (Place place : places) {
        swaps[run] += future(row, life, place, days, replaceAt, random);
      }
    }
    Arrays.sort(swaps);
    int rank = (int) Math.ceil(confidence * RUNS) - 1;
    return new Spares(Arrays.stream(swaps).average().orElse(0), swaps[rank]);
  }

  private static int drawn(double uniform, double[] cumulative) {
    int found = Arrays.binarySearch(cumulative, uniform * cumulative[cumulative.length - 1]);
    return Math.min(found >= 0 ? found : -found - 1, cumulative.length - 1);
  }

  private static double drawnLife(double uniform, Row row) {
    double sum = 0;
    for (int k = 0; k < row.size(); k++) {
      sum += row.share(k);
      if (sum >= uniform) {
        return row.logLife(k);
      }
    }
    return row.logLife(row.size() - 1);
  }

  private static int future(
      Row row,
      Weibull life,
      Place place,
      int days,
      OptionalDouble replaceAt,
      SplittableRandom random) {
    Ageing ageing = row.ageing();
    double left = days * ageing.hours(place.perDay());
    double past = place.fitted().past().map(p -> p.hours()).orElse(0.0);
    double age = ageing.age(place.fitted(), ageing.pastHours(place.fitted().past(), past));
    int swaps = 0;
    while (swaps < MOST_SWAPS) {
      double fresh = -Math.log1p(-random.nextDouble());
      double end =
          Math.min(
              Math.exp(
                  life.logLife() + Math.log(life.cumulativeHazard(age) + fresh) / life.shape()),
              replaceAt.orElse(Double.POSITIVE_INFINITY));
      left -= Math.max(0, end - age);
      if (left < 0) {
        break;
      }
      swaps++;
      age = 0;
    }
    return swaps;
  }
}
