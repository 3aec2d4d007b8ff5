package meltkeeper.jam.sim;

import java.util.ArrayList;
import java.util.List;
import meltkeeper.jam.MinutesToStall;
import meltkeeper.jam.Outlook;

/**
 * What a watch told of the minutes to a stall in one episode: its first word, and another every
 * minute for as long as it told any. Mutable.
 */
public final class Forecasts {

  private static final double EVERY_SECONDS = 60;

  /** A range as it was told at a time in seconds. */
  public record Told(double atSeconds, MinutesToStall range) {

    /** True when the stall came within the range. */
    public boolean holds(double stallSeconds) {
      double minutes = minutesLeft(stallSeconds);
      return range.low() <= minutes && minutes <= range.high();
    }

    /** Minutes that were really left. */
    public double minutesLeft(double stallSeconds) {
      return (stallSeconds - atSeconds) / 60;
    }
  }

  private final List<Told> told = new ArrayList<>();

  void look(double seconds, Outlook outlook) {
    boolean due =
        told.isEmpty() || seconds - told.get(told.size() - 1).atSeconds() >= EVERY_SECONDS;
    if (due) {
      outlook.minutesToStall().ifPresent(range -> told.add(new Told(seconds, range)));
    }
  }

  /** What was told from one time on and before another, in order of time. */
  public List<Told> between(double fromSeconds, double untilSeconds) {
    return told.stream()
        .filter(t -> t.atSeconds() >= fromSeconds && t.atSeconds() < untilSeconds)
        .toList();
  }
}
