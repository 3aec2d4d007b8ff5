package meltkeeper.demo;

import java.time.Duration;
import java.util.Random;
import meltkeeper.protocol.JobState;

/**
 * A printer that exists only in numbers: it heats, prints batch after batch, cools, and may jam. It
 * goes on by steps of {@link #STEP_NANOS} of its own time, as often as it is told; the same setup
 * gives the same history. Not for use by several threads at once.
 */
public final class SimulatedPrinter {

  /** Simulated time between two steps. */
  public static final long STEP_NANOS = 100_000_000;

  /** Power of its heater. */
  public static final double HEATER_WATTS = 40;

  /** Hot means above this, °C. */
  public static final double HOT_ABOVE_CELSIUS = 150;

  private static final double STEP_SECONDS = STEP_NANOS * 1e-9;
  private static final double DRAUGHT_WATTS = 0.4;
  private static final double DRAUGHT_STAYS = StrictMath.exp(-STEP_SECONDS / 8);
  private static final double SLIP_AT_USUAL_SPEED = 0.01;

  private final PrinterSetup setup;
  private final Random random;
  private final Shift shift;
  private final FeedMoves moves;
  private final Flow flow;
  private final HeaterBlock block = new HeaterBlock();
  private final Regulator regulator = new Regulator(2, 40, 2, HEATER_WATTS);
  private final HotTime hotTime = new HotTime(HOT_ABOVE_CELSIUS);

  private long nanos;
  private int batch = -1;
  private double duty;
  private double draughtWatts;
  private double commanded;
  private double mark;
  private double measured;
  private double melted;
  private double jobStart;
  private double load;
  private long printingNanos;

  public SimulatedPrinter(PrinterSetup setup) {
    this.setup = setup;
    this.random = new Random(setup.seed());
    this.shift = new Shift(setup.orders(), setup.startsNanos(), setup.open(), setup.clearing());
    this.moves = new FeedMoves(new Random(setup.seed() + 1));
    this.flow = new Flow(setup.troubles());
    this.nanos = setup.startsNanos();
    look();
  }

  public String name() {
    return setup.name();
  }

  /** Goes on by that much simulated time, rounded down to whole steps. */
  public void advance(Duration time) {
    advanceTo(nanos + time.toNanos());
  }

  /** Goes on to that moment, or to the last step before it; does nothing for one in the past. */
  public void advanceTo(long untilNanos) {
    while (nanos + STEP_NANOS <= untilNanos) {
      step();
    }
  }

  private void step() {
    double meltedBefore = melted;
    if (shift.feeding()) {
      feed();
    } else {
      load = 0;
    }
    double speed = (melted - meltedBefore) / STEP_SECONDS;
    double meltWatts =
        shift.order().plastic().meltWatts(speed, HeaterBlock.AMBIENT_CELSIUS, block.blockCelsius());
    duty = regulator.duty(STEP_SECONDS, shift.targetCelsius(), block.sensorCelsius());
    draughtWatts =
        DRAUGHT_STAYS * draughtWatts
            + Math.sqrt(1 - DRAUGHT_STAYS * DRAUGHT_STAYS) * DRAUGHT_WATTS * random.nextGaussian();
    double draught = shift.feeding() ? draughtWatts : 0;
    block.step(STEP_SECONDS, duty * HEATER_WATTS - meltWatts - draught, fan());
    if (shift.state() == JobState.PRINTING) {
      printingNanos += STEP_NANOS;
    }
    nanos += STEP_NANOS;
    look();
  }

  private void look() {
    hotTime.to(nanos, block.sensorCelsius());
    shift.at(nanos, block.sensorCelsius());
    if (shift.state() == JobState.PRINTING && shift.batch() != batch) {
      batch = shift.batch();
      jobStart = commanded;
    }
  }

  private void feed() {
    double left = STEP_SECONDS;
    while (left > 1e-9) {
      FeedMoves.Piece piece = moves.next(left);
      Flow.Fed fed = flow.feed(nanos, piece);
      double slip = SLIP_AT_USUAL_SPEED * Math.max(0, piece.speed()) / Nozzle.USUAL_SPEED;
      commanded += piece.millimetres();
      mark = Math.max(mark, commanded);
      measured += setup.encoder().seen(fed.passed() * (piece.tug() ? 1 : 1 - slip));
      melted += fed.melted() * (1 - slip);
      load = fed.load();
      left -= piece.seconds();
    }
  }

  private double fan() {
    return shift.feeding() ? shift.order().fan() : 0;
  }

  /** This moment. */
  public PrinterState state() {
    Order order = shift.order();
    boolean idle = shift.state() == JobState.IDLE;
    return new PrinterState(
        nanos,
        block.sensorCelsius(),
        shift.targetCelsius(),
        duty,
        commanded,
        setup.encoder().told(measured),
        commanded - jobStart,
        load * Nozzle.GRIP_NEWTON,
        fan(),
        shift.state(),
        idle ? "" : order.goods() + "-" + (shift.batch() + 1),
        order.plastic().name(),
        shift.progress());
  }

  /** What it did up to this moment. */
  public Truth truth() {
    return new Truth(hotTime.secondsByBand(), mark, melted, printingNanos * 1e-9);
  }
}
