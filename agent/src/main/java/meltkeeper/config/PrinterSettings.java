package meltkeeper.config;

import java.util.Map;
import meltkeeper.protocol.motion.MotionLimits;

/**
 * One printer.
 *
 * @param name as topics and commands call it
 * @param from where its readings come from
 * @param hotEnd what holds for every hot end that {@code hotEnds} does not name
 * @param hotEnds by index, for those that differ
 * @param motion what it can do, for reckoning how long a file takes
 */
public record PrinterSettings(
    String name,
    From from,
    HotEndSettings hotEnd,
    Map<Integer, HotEndSettings> hotEnds,
    MotionLimits motion) {

  public PrinterSettings {
    hotEnds = Map.copyOf(hotEnds);
  }

  /** The settings of the hot end of that index, 0 to 15. */
  public HotEndSettings hotEnd(int index) {
    return hotEnds.getOrDefault(index, hotEnd);
  }
}
