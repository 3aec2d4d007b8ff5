package meltkeeper.jam;

import java.util.Optional;

/** Which signals the watch can go by now, and since when too few. Mutable. */
final class Sight {

  private static final double NANOS = 1e9;
  private static final double STALE_SECONDS = 60;
  private static final double STALE_PERIODS = 10;
  private static final double COMMANDED_STALE_SECONDS = 600;
  private static final double PATIENCE_SECONDS = 60;

  private boolean commanded;
  private boolean measured;
  private boolean duty;
  private boolean load;
  private boolean dutyTellsEnough = true;
  private double lackingSeconds;
  private long blindNanos;

  void look(
      Signals signals,
      boolean printing,
      boolean heaterSeesTooLittle,
      double stepSeconds,
      double periodSeconds) {
    dutyTellsEnough = !heaterSeesTooLittle;
    double stale = Math.max(STALE_SECONDS, STALE_PERIODS * periodSeconds);
    commanded =
        isFresh(
            signals.atNanos,
            signals.commandedNanos,
            Math.max(COMMANDED_STALE_SECONDS, STALE_PERIODS * periodSeconds));
    measured = isFresh(signals.atNanos, signals.measuredNanos, stale);
    duty = isFresh(signals.atNanos, signals.dutyNanos, stale);
    load = isFresh(signals.atNanos, signals.loadNanos, stale);
    boolean enough = commanded && (measured || load || (duty && dutyTellsEnough));
    lackingSeconds = printing && !enough ? lackingSeconds + stepSeconds : 0;
    if (isBlind()) {
      blindNanos += Math.round(stepSeconds * NANOS);
    }
  }

  private static boolean isFresh(long now, long told, double staleSeconds) {
    return told != Long.MIN_VALUE && (now - told) / NANOS <= staleSeconds;
  }

  boolean seesMeasured() {
    return measured && commanded;
  }

  boolean seesDuty() {
    return duty && commanded;
  }

  boolean seesLoad() {
    return load && commanded;
  }

  boolean isBlind() {
    return lackingSeconds > PATIENCE_SECONDS;
  }

  long blindNanos() {
    return blindNanos;
  }

  /** Which signal is missing and what to publish. */
  Optional<String> cure() {
    if (!isBlind()) {
      return Optional.empty();
    }
    if (commanded && duty) {
      return Optional.of(
          "feeds too slowly to see a jam from the heater: map filament-measured if there is an"
              + " encoder, or feed-load");
    }
    return Optional.of(
        commanded
            ? "neither measured filament nor heater duty is told: map filament-measured if there is"
                + " an encoder, else heater-duty"
            : "the filament asked for is not told: map filament-commanded, the running total in"
                + " millimetres"
                + (measured || duty ? "" : ", and filament-measured or heater-duty"));
  }

  void keep(Memory memory) {
    commanded = memory.flag("commanded", commanded);
    measured = memory.flag("measured", measured);
    duty = memory.flag("duty", duty);
    load = memory.flag("load", load);
    dutyTellsEnough = memory.flag("dutyTellsEnough", dutyTellsEnough);
    lackingSeconds = memory.number("lacking", lackingSeconds);
    blindNanos = memory.count("blind", blindNanos);
  }
}
