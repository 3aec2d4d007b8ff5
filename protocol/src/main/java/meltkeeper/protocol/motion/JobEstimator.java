package meltkeeper.protocol.motion;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Rejected;
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

  /** Codes that take no time, or none worth reckoning. */
  private static final Set<String> INSTANT =
      Set.of(
          "G17", "G20", "G21", "G90", "G91", "M73", "M82", "M83", "M105", "M106", "M107", "M110",
          "M115", "M117", "M17", "M18", "M84", "M221", "M207", "M208", "M400", "M900");

  private static final int MOST_TOLD = 12;

  private final MotionLimits limits;
  private final Machine machine;
  private final Planner planner;
  private final Heat heat;
  private final Map<Integer, Heater> heaters = new TreeMap<>();
  private final Map<Integer, Double> filament = new TreeMap<>();
  private final Map<String, Integer> unknown = new TreeMap<>();
  private final TreeSet<String> notes = new TreeSet<>();
  private int hotEnd;
  private double plateCelsius = AMBIENT_CELSIUS;
  private double plateTarget = AMBIENT_CELSIUS;
  private double seconds;
  private double layingSeconds;
  private double hottest;
  private long moves;
  private long refused;
  private String firstRefused = "";

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
            s -> {
              layingSeconds += s;
              pass(s);
            });
  }

  /** Takes a line, without its end. Never throws for any bytes. */
  public void accept(Payload line) {
    CommandScan.of(line)
        .fold(
            read -> {
              carryOut(read);
              return true;
            },
            rejected -> {
              refuse(rejected);
              return false;
            });
  }

  /** What it came to. Call it once, at the end. */
  public JobEstimate finish() {
    planner.stop();
    heaters.values().forEach(Heater::tellHeld);
    List<String> told = new ArrayList<>(notes);
    if (refused > 0) {
      told.add(refused + " lines could not be read and were left out; the first: " + firstRefused);
    }
    if (!unknown.isEmpty()) {
      told.add("took no time, being unknown here: " + unknownCodes());
    }
    return new JobEstimate(seconds, layingSeconds, hottest, filament, moves, told);
  }

  private String unknownCodes() {
    String codes = String.join(", ", unknown.keySet().stream().limit(MOST_TOLD).toList());
    return unknown.size() > MOST_TOLD
        ? codes + " and " + (unknown.size() - MOST_TOLD) + " more"
        : codes;
  }

  private void refuse(Rejected rejected) {
    if (refused++ == 0) {
      firstRefused = rejected.detail();
    }
  }

  private void carryOut(CommandLine line) {
    if (line.isEmpty()) {
      return;
    }
    machine.modes().set(line);
    OptionalDouble tool = line.number('T');
    if (tool.isPresent() && !line.has('M') && isHotEnd(tool.getAsDouble())) {
      hotEnd = (int) tool.getAsDouble();
    }
    for (Word word : line.words()) {
      if (word.letter() == 'G' || word.letter() == 'M') {
        carryOut(word, line);
      }
    }
    if (machine.modes().moves(line)) {
      move(line);
    }
  }

  private void carryOut(Word word, CommandLine line) {
    switch (word.toString()) {
      case "G0", "G1", "G2", "G3" -> {}
      case "G4" -> dwell(line);
      case "G28" -> {
        planner.stop();
        machine.home(line);
        pass(limits.homingSeconds());
      }
      case "G92" -> machine.rename(line);
      case "M104" -> aim(line, false);
      case "M109" -> aim(line, true);
      case "M140" -> line.number('S').ifPresent(this::aimPlate);
      case "M190" -> waitForPlate(line);
      case "M201" -> machine.limitAxes(line, false);
      case "M203" -> machine.limitAxes(line, true);
      case "M204" -> machine.accelerate(line);
      case "M205" -> machine.corner(line);
      case "M220" -> machine.scaleFeed(line);
      default -> {
        if (!INSTANT.contains(word.toString()) && unknown.size() < 1000) {
          unknown.merge(word.toString(), 1, Integer::sum);
        }
      }
    }
  }

  private void move(CommandLine line) {
    Machine.Made made = machine.move(line);
    if (!machine.hasFeed()) {
      notes.add("moves before the first F word are taken at " + Machine.UNTOLD_SPEED + " mm/s");
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

  private void aim(CommandLine line, boolean waits) {
    double index = line.number('T').orElse(hotEnd);
    OptionalDouble hold = line.number('S');
    OptionalDouble told = hold.isPresent() ? hold : line.number('R');
    if (told.isEmpty() || !isHotEnd(index)) {
      return;
    }
    double celsius = told.getAsDouble();
    if (!(celsius >= 0 && celsius <= HIGHEST_CELSIUS)) {
      notes.add("a target of " + celsius + " °C was left out; allowed: 0 to 600 °C");
      return;
    }
    hottest = Math.max(hottest, celsius);
    Heater heater = heaters.computeIfAbsent((int) index, this::cold);
    if (waits) {
      planner.stop();
      heater.aim(celsius, AMBIENT_CELSIUS);
      pass(heater.secondsToTarget(hold.isEmpty()));
    } else {
      planner.add(() -> heater.aim(celsius, AMBIENT_CELSIUS));
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

  private void pass(double passed) {
    seconds += passed;
    plateCelsius =
        plateTarget > plateCelsius
            ? Math.min(plateTarget, plateCelsius + passed * limits.plateHeating())
            : plateTarget;
    heaters.values().forEach(heater -> heater.pass(passed));
  }
}
