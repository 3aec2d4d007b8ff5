package meltkeeper.jam;

/**
 * How long it may take until nothing is fed any more, if it goes on as it does: a range in which
 * four stalls in five come.
 *
 * @param low minutes, 0 or more
 * @param high minutes, at least {@code low}
 */
public record MinutesToStall(double low, double high) {

  public MinutesToStall {
    if (!(low >= 0) || !(high >= low)) {
      throw new IllegalArgumentException(
          "minutes to a stall run from 0 or more upwards, not from " + low + " to " + high);
    }
  }
}
