package meltkeeper.outlook;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import meltkeeper.life.CalendarHabit;
import meltkeeper.life.PartLife;
import meltkeeper.part.Ending;
import meltkeeper.part.Exposure;
import meltkeeper.part.Kind;

/**
 * A way to decide on swaps that the advice is measured against.
 *
 * @param words to follow "against": {@code a swap every 60 days}
 * @param calendar the hot time from one swap to the next
 */
record Habit(String words, CalendarHabit calendar) {

  private static final long USUAL_DAYS = 60;

  /**
   * The shop's habits, the one that counts first: the calendar of the configuration, else what the
   * shop's own precautionary swaps have been like, else 60 days; and 60 days beside it. None where
   * neither swaps nor duty are known.
   */
  static List<Habit> of(Kind kind, List<PartLife> lives, List<Duty> duties) {
    List<Habit> habits = new ArrayList<>();
    long days = kind.habit().map(every -> every.toDays()).orElse(USUAL_DAYS);
    Optional<Habit> calendar = everyDays(days, duties);
    if (kind.habit().isPresent()) {
      calendar.ifPresent(habits::add);
      ownSwaps(lives).ifPresent(habits::add);
    } else {
      ownSwaps(lives).ifPresent(habits::add);
      calendar.ifPresent(habits::add);
    }
    return habits;
  }

  private static Optional<Habit> everyDays(long days, List<Duty> duties) {
    List<Exposure> each =
        duties.stream().filter(duty -> !duty.isIdle()).map(duty -> duty.ofDays(days)).toList();
    return mean(each)
        .map(hot -> new Habit("a swap every " + days + " days", new CalendarHabit(hot)));
  }

  private static Optional<Habit> ownSwaps(List<PartLife> lives) {
    List<Exposure> each =
        lives.stream()
            .filter(l -> l.ending().equals(new Ending.Censored(Ending.Why.PRECAUTION)))
            .map(Habit::hot)
            .filter(hot -> hot.hotNanos() > 0)
            .toList();
    return mean(each)
        .map(
            hot ->
                new Habit(
                    String.format(
                        java.util.Locale.ROOT,
                        "your swaps in good time so far, after %.0f hot hours on average",
                        hot.hotHours()),
                    new CalendarHabit(hot)));
  }

  private static Exposure hot(PartLife life) {
    Exposure hot = Exposure.NONE;
    for (var spell : life.spells()) {
      hot = hot.plus(spell.hot());
    }
    return hot;
  }

  private static Optional<Exposure> mean(List<Exposure> each) {
    Exposure sum = Exposure.NONE;
    for (Exposure one : each) {
      sum = sum.plus(one);
    }
    return each.isEmpty() ? Optional.empty() : Optional.of(sum.share(1, each.size()));
  }
}
