package meltkeeper.jam.sim;

import java.time.Duration;
import java.util.List;
import java.util.function.Consumer;
import meltkeeper.demo.Encoder;
import meltkeeper.demo.Order;
import meltkeeper.demo.Plastic;
import meltkeeper.demo.PrinterSetup;
import meltkeeper.demo.PrinterState;
import meltkeeper.demo.SimulatedPrinter;
import meltkeeper.demo.Trouble;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Sample;

/**
 * A printer of the demo, which was made for another purpose and by another model than {@link
 * Episode}: one lump of metal, another controller, other moves, other slip. It knows three faults.
 */
public final class DemoCourse implements Course {

  private static final HotEnd WREN = HotEnd.first("wren");
  private static final double AFTER_STALL = 600;
  private static final double LONGEST_FAULT = 8 * 3600;
  private static final double NANOS = 1e9;

  private final Draw draw;
  private final double healthySeconds;
  private final Fault fault;
  private final Encoder encoder;
  private final double period;
  private final double dutyCounts;
  private final boolean tellsFan;
  private final SimulatedPrinter printer;
  private final IdealCusum ideal = new IdealCusum();
  private final StallClock stall = new StallClock();

  /** A printer that is well for so many hours, and then has its fault. */
  public DemoCourse(long seed, Fault fault, double healthyHours) {
    draw = Draw.of(seed);
    this.fault = fault;
    healthySeconds = healthyHours * 3600;
    boolean blind = draw.chance(0.2);
    encoder = new Encoder(blind ? draw.oneOf(0.5, 1, 2) : draw.oneOf(0.02, 0.1, 0.5, 1, 2), blind);
    period = draw.oneOf(1, 1, 2, 2, 3, 5);
    dutyCounts = draw.oneOf(100, 127, 255);
    tellsFan = draw.chance(0.5);
    printer =
        new SimulatedPrinter(
            new PrinterSetup(
                "wren",
                seed,
                0,
                Duration.ofDays(1),
                Duration.ofMinutes(5),
                List.of(order(), order(), order()),
                encoder,
                troubles()));
  }

  private Order order() {
    return new Order(
        "plant-labels",
        List.of(Plastic.PLA, Plastic.PETG, Plastic.ABS).get((int) draw.between(0, 3)),
        draw.between(205, 250),
        draw.oneOf(0, 0.3, 0.8, 1),
        Duration.ofMinutes(10L * (int) draw.between(4, 18)));
  }

  private List<Trouble> troubles() {
    long from = (long) (healthySeconds * NANOS);
    return switch (fault) {
      case NONE -> List.of();
      case CLOG -> List.of(new Trouble.Clog(from, (long) (draw.scaled(600, 21_600) * NANOS)));
      case BLOCK -> List.of(new Trouble.Block(from));
      case RUNOUT -> List.of(new Trouble.Runout(from, draw.oneOf(50, 500, 800)));
      case HEAT_CREEP, GRINDING, TANGLE ->
          throw new IllegalArgumentException("the demo's printers know no " + fault.label());
    };
  }

  @Override
  public HotEnd hotEnd() {
    return WREN;
  }

  @Override
  public boolean encoderIsBlind() {
    return encoder.blind();
  }

  @Override
  public double encoderScale() {
    return 1;
  }

  @Override
  public Truth run(Consumer<Reading> readings) {
    double onset = fault == Fault.NONE ? Double.POSITIVE_INFINITY : healthySeconds;
    double ends = fault == Fault.NONE ? healthySeconds : healthySeconds + LONGEST_FAULT;
    PrinterState last = printer.state();
    for (double now = period; now < ends && now < stall.seconds() + AFTER_STALL; now += period) {
      printer.advanceTo((long) (now * NANOS));
      PrinterState state = printer.state();
      if (state.state() == JobState.PRINTING) {
        boolean faulty = now >= onset;
        ideal.take(now, state.commandedMillimetres(), state.measuredMillimetres(), faulty);
        stall.take(
            now,
            state.commandedMillimetres() - last.commandedMillimetres(),
            state.measuredMillimetres() - last.measuredMillimetres(),
            faulty);
      }
      last = state;
      tell(state, readings);
    }
    return new Truth(
        onset, stall.seconds(), printer.truth().printingSeconds(), ideal.alarmSeconds(), 0);
  }

  private void tell(PrinterState state, Consumer<Reading> readings) {
    Sample sample =
        Sample.timed(
            WREN, state.nanos(), state.nanos() + (long) (Math.abs(draw.normal(0.05)) * NANOS));
    readings.accept(new Reading.HotEndTemperature(sample, Math.round(state.celsius() * 10) / 10.0));
    readings.accept(new Reading.HotEndTarget(sample, state.targetCelsius()));
    readings.accept(
        new Reading.HeaterDuty(sample, Math.round(state.duty() * dutyCounts) / dutyCounts));
    readings.accept(new Reading.FilamentCommanded(sample, state.commandedMillimetres()));
    readings.accept(new Reading.FilamentMeasured(sample, state.measuredMillimetres()));
    readings.accept(new Reading.JobStatus(sample, state.state()));
    readings.accept(new Reading.Job(sample, state.job()));
    if (tellsFan) {
      readings.accept(new Reading.Fan(sample, state.fan()));
    }
  }
}
