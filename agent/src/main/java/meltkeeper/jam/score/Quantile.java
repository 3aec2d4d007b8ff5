package meltkeeper.jam.score;

import java.util.List;

/** Quantiles of few values, by straight lines between them (Hyndman and Fan 1996, number 7). */
public final class Quantile {

  private Quantile() {}

  /**
   * The value below which that share of them lies.
   *
   * @param sorted in rising order, at least one
   * @param share 0 to 1
   */
  public static double of(List<Double> sorted, double share) {
    double place = share * (sorted.size() - 1);
    int below = (int) Math.floor(place);
    double low = sorted.get(below);
    double high = sorted.get(Math.min(below + 1, sorted.size() - 1));
    return place == below ? low : low + (place - below) * (high - low);
  }
}
