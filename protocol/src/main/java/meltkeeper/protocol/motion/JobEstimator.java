package meltkeeper.protocol.motion;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.gcode.CommandLine;
import meltkeeper.protocol.gcode.CommandScan;
import meltkeeper.protocol.gcode.Word;

/**
 * Reckons a G-code file line by line, as a printer would carry it out; the RepRap dialect's codes
 * (common practice, no source) for what RS274/NGC does not have. Codes that it does not know take
 * no time and are told in the notes. Not safe for use by several threads.
 */
public final class JobEstimator {

  /** A room, and a printer that was not heated before. */
  private static final double AMBIENT_CELSIUS = 25;

  private static final double HIGHEST_CELSIUS = 600;

  /** The longest job that is reckoned, 10,000 h; what goes beyond is not counted. */
  public static final double LONGEST_SECONDS = 10_000 * 3600.0;

  private final MotionLimits limits;
  private final Machine machine;
  private final Planner planner;
  private final Heat heat;
  private final Map<Integer, Heater> heaters = new TreeMap<>();
  private final Map<Integer, Double> filament = new TreeMap<>();
  private final Remarks remarks = new Remarks();
  private int hotEnd;
  private double plateCelsius = AMBIENT_CELSIUS;
  private double plateTarget = AMBIENT_CELSIUS;
  private double seconds;
  private double layingSeconds;
  private double hottest;
  private long moves;

  /**
   * At the beginning of a file, the printer cold.
   *
   * @param heat takes the temperature of each hot end from its first target on
   */
  public JobEstimator(MotionLimits limits, Heat heat) {
    this.limits = limits;
    this.heat = heat;
    this.machine = new Machine(limits);
    this.planner =
        new Planner(
            limits.lookAhead(),
            this::pass,
            laid -> {
              double before = seconds;
              pass(laid);
              layingSeconds += seconds - before;
            });
  }

  /**
   * Takes a line, without its end. Never throws for any bytes.
   *
   * @param number of the line in its file, counted from 1
   */
  public void accept(Payload line, long number) {
    CommandScan scan = CommandScan.of(line);
    if (scan instanceof CommandLine read) {
      carryOut(read, number);
    } else if (scan instanceof CommandScan.Refused refused) {
      String rule = refused.rejected().detail();
      remarks.leaveOut(number, Fault.of("", line.text(), "a line of G-code", rule));
    }
  }

  /** What it came to, the hot ends having followed their last targets. Call it once, at the end. */
  public JobEstimate finish() {
    planner.stop();
    heaters.values().forEach(this::letFollow);
    return new JobEstimate(
        seconds, layingSeconds, hottest, filament, moves, remarks.faults(), remarks.told());
  }

  private void letFollow(Heater heater) {
    heater.pass(heater.secondsToTarget(true));
    heater.tellHeld();
    if (heater.celsius() > AMBIENT_CELSIUS) {
      remarks.note(
          "hot end " + heater.index() + " is left on at " + heater.celsius() + " °C at the end");
    }
  }

  private void carryOut(CommandLine line, long number) {
    machine.modes().set(line);
    Optional<Fault> fault = machine.faultOf(line).or(() -> faultOfHeat(line));
    if (fault.isPresent()) {
      remarks.leaveOut(number, fault.get());
      return;
    }
    boolean isForM = line.has('M');
    for (Word word : line.words()) {
      switch (word.letter()) {
        case 'G' -> carryOutG(word, line);
        case 'M' -> carryOutM(word, line);
        case 'T' -> {
          if (!isForM) {
            choose(word);
          }
        }
        default -> {}
      }
    }
    if (machine.modes().moves(line)) {
      move(line);
    }
  }

  private void choose(Word tool) {
    double index = tool.number().orElse(-1);
    if (!isHotEnd(index)) {
      remarks.passOver(tool);
    } else if (index != hotEnd) {
      planner.stop();
      hotEnd = (int) index;
    }
  }

  private void carryOutG(Word word, CommandLine line) {
    switch (word.tenths()) {
      case 0, 10, 20, 30, 200, 210, 900, 910 -> {}
      case 40 -> dwell(line);
      case 280 -> {
        planner.stop();
        machine.home(line);
        pass(limits.homingSeconds());
      }
      case 920 -> machine.rename(line);
      default -> remarks.passOver(word);
    }
  }

  private void carryOutM(Word word, CommandLine line) {
    switch (word.tenths()) {
      case 1040 -> aim(line, false);
      case 1090 -> aim(line, true);
      case 1400 -> line.number('S').ifPresent(this::aimPlate);
      case 1900 -> waitForPlate(line);
      case 2010 -> machine.limitAxes(line, false);
      case 2030 -> machine.limitAxes(line, true);
      case 2040 -> machine.accelerate(line);
      case 2050 -> machine.corner(line);
      case 2200 -> machine.scaleFeed(line);
      case 4000 -> planner.stop();
      default -> remarks.passOver(word);
    }
  }

  private void move(CommandLine line) {
    Machine.Made made = machine.move(line);
    if (!machine.hasFeed()) {
      remarks.note("moves before the first F word are taken at " + Machine.UNTOLD_SPEED + " mm/s");
    }
    filament.merge(hotEnd, made.fedMillimetres(), Double::sum);
    made.move()
        .ifPresent(
            move -> {
              moves++;
              planner.add(move, machine.junctionDeviation());
            });
  }

  private void dwell(CommandLine line) {
    double told = line.number('S').orElse(line.number('P').orElse(0) / 1000);
    planner.stop();
    pass(Math.max(0, told));
  }

  private Optional<Fault> faultOfHeat(CommandLine line) {
    if (!line.calls('M', 104) && !line.calls('M', 109)) {
      return Optional.empty();
    }
    double index = line.number('T').orElse(hotEnd);
    double celsius = target(line).orElse(0);
    if (!isHotEnd(index)) {
      return Optional.of(Fault.of("T", index, "a hot end of 0 to " + HotEnd.MAX_INDEX));
    }
    return celsius >= 0 && celsius <= HIGHEST_CELSIUS
        ? Optional.empty()
        : Optional.of(Fault.of("target", celsius, "0 to 600 °C"));
  }

  private static OptionalDouble target(CommandLine line) {
    OptionalDouble hold = line.number('S');
    return hold.isPresent() ? hold : line.number('R');
  }

  /** Sets a target, told or not: a wait without one is for the target that stands. */
  private void aim(CommandLine line, boolean waits) {
    int index = (int) line.number('T').orElse(hotEnd);
    Heater heater = heaters.computeIfAbsent(index, this::cold);
    target(line)
        .ifPresent(
            celsius -> {
              hottest = Math.max(hottest, celsius);
              planner.add(() -> heater.aim(celsius, AMBIENT_CELSIUS));
            });
    if (waits) {
      planner.stop();
      boolean waitsForCooling = line.number('S').isEmpty() && line.number('R').isPresent();
      pass(heater.secondsToTarget(waitsForCooling));
    }
  }

  private Heater cold(int index) {
    return new Heater(index, AMBIENT_CELSIUS, limits.heating(), limits.cooling(), heat);
  }

  private static boolean isHotEnd(double index) {
    return index >= 0 && index <= HotEnd.MAX_INDEX && index == Math.rint(index);
  }

  private void aimPlate(double celsius) {
    plateTarget = Math.max(AMBIENT_CELSIUS, Math.min(HIGHEST_CELSIUS, celsius));
  }

  private void waitForPlate(CommandLine line) {
    OptionalDouble hold = line.number('S');
    (hold.isPresent() ? hold : line.number('R')).ifPresent(this::aimPlate);
    planner.stop();
    pass(Math.max(0, (plateTarget - plateCelsius) / limits.plateHeating()));
  }

  private void pass(double asked) {
    double left = LONGEST_SECONDS - seconds;
    double passed = asked <= left ? asked : left;
    seconds += passed;
    plateCelsius =
        plateTarget > plateCelsius
            ? Math.min(plateTarget, plateCelsius + passed * limits.plateHeating())
            : plateTarget;
    heaters.values().forEach(heater -> heater.pass(passed));
  }
}
