package meltkeeper.demo;

import java.time.Duration;
import java.util.List;

/**
 * What makes one simulated printer.
 *
 * @param name a bird
 * @param seed of all that is random in it
 * @param startsNanos when it is switched on, cold, and its first batch begins
 * @param open how long batches are begun each day
 * @param clearing from the end of one batch to the beginning of the next
 * @param orders printed one after the other, over and over
 * @param troubles that it will have
 */
public record PrinterSetup(
    String name,
    long seed,
    long startsNanos,
    Duration open,
    Duration clearing,
    List<Order> orders,
    Encoder encoder,
    List<Trouble> troubles) {

  private static final Order LABELS =
      new Order("plant-labels", Plastic.PLA, 225, 0.8, Duration.ofMinutes(25));
  private static final Order ORGANISERS =
      new Order("drawer-organisers", Plastic.PETG, 237, 0.3, Duration.ofMinutes(90));

  public PrinterSetup {
    orders = List.copyOf(orders);
    troubles = List.copyOf(troubles);
  }

  /** A printer of the shop on its usual goods, 13 h a day, without troubles. */
  public static PrinterSetup usual(String name, long seed, long startsNanos) {
    return new PrinterSetup(
        name,
        seed,
        startsNanos,
        Duration.ofHours(13),
        Duration.ofMinutes(15),
        List.of(LABELS, LABELS, ORGANISERS),
        new Encoder(0.02, false),
        List.of());
  }

  /** The same with other troubles. */
  public PrinterSetup having(Trouble... others) {
    return new PrinterSetup(
        name, seed, startsNanos, open, clearing, orders, encoder, List.of(others));
  }

  /** The same with another encoder. */
  public PrinterSetup with(Encoder other) {
    return new PrinterSetup(name, seed, startsNanos, open, clearing, orders, other, troubles);
  }
}
