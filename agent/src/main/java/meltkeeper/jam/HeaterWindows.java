package meltkeeper.jam;

import java.util.Optional;

/** Cuts the time at target into windows for {@link Heater}. Mutable. */
final class HeaterWindows {

  private static final double LEAST_SECONDS = 8;
  private static final double WINDOW_PERIODS = 1.9;
  private static final double FAR_FROM_TARGET = 6;

  private double seconds;
  private double dutySum;
  private double aboveSum;
  private double fanSum;
  private double firstCelsius;
  private double firstFed;
  private long restarts;

  /** Adds the time up to this moment; a window when it is full. */
  Optional<Heater.Window> take(Signals signals, double stepSeconds, double periodSeconds) {
    double above = signals.celsius - signals.targetCelsius;
    if (Double.isNaN(signals.targetCelsius)) {
      above = 0;
    }
    if (Math.abs(above) > FAR_FROM_TARGET || restarts != signals.commanded.restarts()) {
      open(signals);
      return Optional.empty();
    }
    seconds += stepSeconds;
    dutySum += stepSeconds * signals.duty;
    aboveSum += stepSeconds * above;
    fanSum += stepSeconds * (Double.isNaN(signals.fan) ? 0 : signals.fan);
    if (seconds < Math.max(LEAST_SECONDS, WINDOW_PERIODS * periodSeconds)) {
      return Optional.empty();
    }
    Heater.Window window =
        new Heater.Window(
            seconds,
            dutySum / seconds,
            Math.max(0, (signals.commanded.fed() - firstFed) / seconds),
            (signals.celsius - firstCelsius) / seconds,
            aboveSum / seconds,
            fanSum / seconds,
            Double.isNaN(signals.targetCelsius) ? signals.celsius : signals.targetCelsius,
            signals.material);
    open(signals);
    return Optional.of(window);
  }

  void open(Signals signals) {
    seconds = 0;
    dutySum = 0;
    aboveSum = 0;
    fanSum = 0;
    firstCelsius = signals.celsius;
    firstFed = signals.commanded.fed();
    restarts = signals.commanded.restarts();
  }

  void keep(Memory memory) {
    seconds = memory.number("seconds", seconds);
    dutySum = memory.number("dutySum", dutySum);
    aboveSum = memory.number("aboveSum", aboveSum);
    fanSum = memory.number("fanSum", fanSum);
    firstCelsius = memory.number("firstCelsius", firstCelsius);
    firstFed = memory.number("firstFed", firstFed);
    restarts = memory.count("restarts", restarts);
  }
}
