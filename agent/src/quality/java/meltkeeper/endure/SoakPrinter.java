package meltkeeper.endure;

import java.util.ArrayList;
import java.util.List;

/**
 * A printer of the soak: some batches a day, each heated up in two minutes, printed at one
 * temperature and cooled in five. Its corners stand at whole minutes, when it is sampled, so that
 * its hot time is known in closed form.
 *
 * @param batches a day
 * @param printSeconds of each, a multiple of sixty
 * @param celsius of each
 */
record SoakPrinter(String name, int batches, int printSeconds, double celsius) {

  static final int DAY_SECONDS = 86_400;

  private static final double COLD = 25;
  private static final double HOT_ABOVE = 150;
  private static final int HEAT_SECONDS = 120;
  private static final int COOL_SECONDS = 300;
  private static final double MILLIMETRES_A_SECOND = 1.5;

  static List<SoakPrinter> shop() {
    List<SoakPrinter> shop = new ArrayList<>();
    shop.add(new SoakPrinter("heron", 2, 21_600, 225));
    shop.add(new SoakPrinter("ibis", 3, 15_960, 237));
    shop.add(new SoakPrinter("egret", 6, 6_000, 212.5));
    shop.add(new SoakPrinter("kestrel", 1, 69_960, 245));
    shop.add(new SoakPrinter("plover", 4, 9_000, 205));
    return shop;
  }

  private int slotSeconds() {
    return DAY_SECONDS / batches / 60 * 60;
  }

  private int inBatch(int secondOfDay) {
    int slot = slotSeconds();
    return secondOfDay / slot < batches ? secondOfDay % slot : slot;
  }

  double celsiusAt(int secondOfDay) {
    int at = inBatch(secondOfDay);
    int cooling = at - HEAT_SECONDS - printSeconds;
    if (at < HEAT_SECONDS) {
      return COLD + (celsius - COLD) * at / HEAT_SECONDS;
    }
    return cooling < 0
        ? celsius
        : Math.max(COLD, celsius - (celsius - COLD) * cooling / COOL_SECONDS);
  }

  boolean isPrinting(int secondOfDay) {
    int at = inBatch(secondOfDay);
    return at >= HEAT_SECONDS && at < HEAT_SECONDS + printSeconds;
  }

  /** Millimetres fed from the first day's midnight on. */
  double fed(int day, int secondOfDay) {
    int slot = slotSeconds();
    int done = Math.min(batches, secondOfDay / slot);
    int within =
        done < batches ? Math.min(printSeconds, Math.max(0, secondOfDay % slot - HEAT_SECONDS)) : 0;
    long seconds = ((long) day * batches + done) * printSeconds + within;
    return seconds * MILLIMETRES_A_SECOND;
  }

  /** Hot seconds in a day, in closed form: the plateau, and the upper parts of both slopes. */
  double hotSecondsADay() {
    double upper = (celsius - HOT_ABOVE) / (celsius - COLD);
    return batches * (printSeconds + upper * (HEAT_SECONDS + COOL_SECONDS));
  }
}
