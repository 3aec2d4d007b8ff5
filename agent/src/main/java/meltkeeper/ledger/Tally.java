package meltkeeper.ledger;

import meltkeeper.part.Exposure;

/**
 * Facts about a stretch of one hot end's time. Sums are exact, so that order never matters.
 *
 * @param exposure hot time by band
 * @param bridgedNanos hot time that was credited across a gap in the telemetry; within {@code
 *     exposure}
 * @param unobservedNanos time that was not credited though the hot end may have been hot
 * @param idleNanos hot time without feeding; within {@code exposure}
 * @param printingNanos time printing
 * @param commandedMicrometres filament asked for, as the rise of its high-water mark
 * @param measuredMicrometres filament seen to move, likewise
 */
public record Tally(
    Exposure exposure,
    long bridgedNanos,
    long unobservedNanos,
    long idleNanos,
    long printingNanos,
    long commandedMicrometres,
    long measuredMicrometres) {

  /** Nothing. */
  public static final Tally NONE = new Tally(Exposure.NONE, 0, 0, 0, 0, 0, 0);

  public Tally plus(Tally other) {
    return new Tally(
        exposure.plus(other.exposure),
        Math.addExact(bridgedNanos, other.bridgedNanos),
        Math.addExact(unobservedNanos, other.unobservedNanos),
        Math.addExact(idleNanos, other.idleNanos),
        Math.addExact(printingNanos, other.printingNanos),
        Math.addExact(commandedMicrometres, other.commandedMicrometres),
        Math.addExact(measuredMicrometres, other.measuredMicrometres));
  }

  public Tally minus(Tally other) {
    return new Tally(
        exposure.minus(other.exposure),
        bridgedNanos - other.bridgedNanos,
        unobservedNanos - other.unobservedNanos,
        idleNanos - other.idleNanos,
        printingNanos - other.printingNanos,
        commandedMicrometres - other.commandedMicrometres,
        measuredMicrometres - other.measuredMicrometres);
  }

  /** The share of it that falls into {@code part} of {@code whole} nanoseconds, rounded down. */
  public Tally share(long part, long whole) {
    return new Tally(
        exposure.share(part, whole),
        Exposure.share(bridgedNanos, part, whole),
        Exposure.share(unobservedNanos, part, whole),
        Exposure.share(idleNanos, part, whole),
        Exposure.share(printingNanos, part, whole),
        Exposure.share(commandedMicrometres, part, whole),
        Exposure.share(measuredMicrometres, part, whole));
  }
}
