package meltkeeper.protocol.motion;

import java.util.Optional;
import java.util.OptionalDouble;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.gcode.CommandLine;
import meltkeeper.protocol.gcode.Modes;

/** Where a machine is, and how its limits stand as the file changes them. */
final class Machine {

  private static final char[] AXES = {'X', 'Y', 'Z', 'E'};
  private static final int X = 0;
  private static final int Y = 1;
  private static final int Z = 2;
  private static final int E = 3;

  private static final double FARTHEST = 10_000;
  private static final double FARTHEST_FILAMENT = 1e9;

  /** More than rounding to a file's few decimals explains. */
  private static final double LOOSE_MILLIMETRES = 0.05;

  private static final double LOOSE_SHARE = 0.01;

  /** A file that moves before it tells a speed moves at this one, mm/s. */
  static final double UNTOLD_SPEED = 25;

  private final Modes modes = new Modes();
  private final double[] place = new double[AXES.length];
  private final double[] fastest;
  private final double[] mostAcceleration = new double[AXES.length];
  private double laying;
  private double travelling;
  private double filamentAlone;
  private double junctionDeviation;
  private double feed;
  private double feedFactor = 1;

  Machine(MotionLimits limits) {
    this.fastest =
        new double[] {
          limits.plateSpeed(), limits.plateSpeed(), limits.heightSpeed(), limits.filamentSpeed()
        };
    java.util.Arrays.fill(mostAcceleration, Double.POSITIVE_INFINITY);
    this.laying = limits.acceleration();
    this.travelling = limits.travelAcceleration();
    this.filamentAlone = limits.filamentAcceleration();
    this.junctionDeviation = limits.junctionDeviation();
  }

  Modes modes() {
    return modes;
  }

  double junctionDeviation() {
    return junctionDeviation;
  }

  /** True once the file told a speed. */
  boolean hasFeed() {
    return feed > 0;
  }

  /** What is wrong with the numbers of a line that moves or renames, its modes being set. */
  Optional<Fault> faultOf(CommandLine line) {
    boolean moves = modes.moves(line);
    if (!moves && !line.calls('G', 92)) {
      return Optional.empty();
    }
    for (int axis = 0; axis < AXES.length; axis++) {
      if (moves && line.has(AXES[axis]) && line.number(AXES[axis]).isEmpty()) {
        return Optional.of(
            Fault.of(String.valueOf(AXES[axis]), line, "a number behind the letter"));
      }
      double farthest = axis == E ? FARTHEST_FILAMENT : FARTHEST;
      if (!(Math.abs(goal(line, axis, moves)) <= farthest)) {
        return Optional.of(
            Fault.of(
                String.valueOf(AXES[axis]),
                line.number(AXES[axis]).orElse(0),
                (axis == E ? "a place up to 1000000000 mm" : "a place up to 10000 mm")
                    + " to either side of 0"));
      }
    }
    return moves && modes.motion().orElse(1) >= 2 ? faultOfArc(line) : Optional.empty();
  }

  private double goal(CommandLine line, int axis, boolean moves) {
    OptionalDouble told = line.number(AXES[axis]);
    if (told.isEmpty()) {
      return place[axis];
    }
    boolean relative = axis == E ? modes.filamentIsRelative() : modes.isRelative();
    double value = modes.millimetres(told.getAsDouble());
    return moves && relative ? place[axis] + value : value;
  }

  private Optional<Fault> faultOfArc(CommandLine line) {
    for (char letter : new char[] {'I', 'J', 'R'}) {
      if (!(Math.abs(modes.millimetres(line.number(letter).orElse(0))) <= FARTHEST)) {
        return Optional.of(Fault.of("arc", line, "I, J and R up to 10000 mm"));
      }
    }
    if (line.number('R').isPresent()) {
      return Optional.empty();
    }
    double i = modes.millimetres(line.number('I').orElse(0));
    double j = modes.millimetres(line.number('J').orElse(0));
    double radius = Math.hypot(i, j);
    double x = goal(line, X, true) - place[X];
    double y = goal(line, Y, true) - place[Y];
    double apart = Math.abs(Math.hypot(x - i, y - j) - radius);
    return radius > 0 && apart <= Math.max(LOOSE_MILLIMETRES, LOOSE_SHARE * radius)
        ? Optional.empty()
        : Optional.of(
            Fault.of(
                "arc", line, "a radius R, or a centre I, J as far from the end as from the start"));
  }

  /** Filament that a move feeds, and the move; none when it goes nowhere. */
  record Made(double fedMillimetres, Optional<Move> move) {}

  /** Carries out a motion line. */
  Made move(CommandLine line) {
    line.number('F').ifPresent(f -> feed = f > 0 ? modes.millimetres(f) / 60 : feed);
    double[] by = new double[AXES.length];
    for (int axis = 0; axis < AXES.length; axis++) {
      double goal = goal(line, axis, true);
      by[axis] = goal - place[axis];
      place[axis] = goal;
    }
    Path path = path(line, by);
    double length = path.length() > 0 ? path.length() : Math.abs(by[E]);
    return new Made(
        by[E],
        length > 0 && Double.isFinite(length)
            ? Optional.of(move(path, by, length))
            : Optional.empty());
  }

  private Path path(CommandLine line, double[] by) {
    int motion = modes.motion().orElse(1);
    if (motion < 2) {
      return Path.straight(by[X], by[Y], by[Z]);
    }
    boolean clockwise = motion == 2;
    OptionalDouble radius = line.number('R');
    return radius.isPresent()
        ? Path.arc(by[X], by[Y], by[Z], modes.millimetres(radius.getAsDouble()), clockwise)
        : Path.arc(
            by[X],
            by[Y],
            by[Z],
            modes.millimetres(line.number('I').orElse(0)),
            modes.millimetres(line.number('J').orElse(0)),
            clockwise);
  }

  private Move move(Path path, double[] by, double length) {
    boolean lays = path.length() > 0 && by[E] > 0;
    double acceleration = path.length() > 0 ? (lays ? laying : travelling) : filamentAlone;
    double speed = (feed > 0 ? feed : UNTOLD_SPEED) * feedFactor;
    for (int axis = 0; axis < AXES.length; axis++) {
      double along = axisShare(path, by, axis, length);
      if (along > 0) {
        speed = Math.min(speed, fastest[axis] / along);
        acceleration = Math.min(acceleration, mostAcceleration[axis] / along);
      }
    }
    speed = Math.min(speed, Math.sqrt(acceleration * path.radius()));
    return new Move(length, speed, acceleration, path.start(), path.end(), lays);
  }

  /** How fast an axis goes against the path; an arc turns both axes of the plate through all. */
  private static double axisShare(Path path, double[] by, int axis, double length) {
    boolean turns = !Double.isInfinite(path.radius()) && axis <= Y;
    return turns ? 1 : Math.abs(by[axis]) / length;
  }

  /** G92: the place has another name. */
  void rename(CommandLine line) {
    boolean any = false;
    for (int axis = 0; axis < AXES.length; axis++) {
      OptionalDouble told = line.number(AXES[axis]);
      any |= told.isPresent();
      if (told.isPresent()) {
        place[axis] = modes.millimetres(told.getAsDouble());
      }
    }
    if (!any) {
      java.util.Arrays.fill(place, 0);
    }
  }

  /** G28: at the origin, of the axes named or of all. */
  void home(CommandLine line) {
    boolean all = !(line.has('X') || line.has('Y') || line.has('Z'));
    for (int axis = X; axis <= Z; axis++) {
      if (all || line.has(AXES[axis])) {
        place[axis] = 0;
      }
    }
  }

  /** M201 and M203: what an axis can do at most, by the file. */
  void limitAxes(CommandLine line, boolean speeds) {
    for (int axis = 0; axis < AXES.length; axis++) {
      double told = modes.millimetres(line.number(AXES[axis]).orElse(0));
      if (told > 0) {
        (speeds ? fastest : mostAcceleration)[axis] = told;
      }
    }
  }

  /** M204: accelerations of laying, travelling and filament moves. */
  void accelerate(CommandLine line) {
    double all = modes.millimetres(line.number('S').orElse(0));
    laying = positive(line, 'P', all > 0 ? all : laying);
    travelling = positive(line, 'T', all > 0 ? all : travelling);
    filamentAlone = positive(line, 'R', filamentAlone);
  }

  /** M205 J: the junction deviation. */
  void corner(CommandLine line) {
    line.number('J').ifPresent(told -> junctionDeviation = Math.max(0, modes.millimetres(told)));
  }

  /** M220 S: all speeds, in percent. */
  void scaleFeed(CommandLine line) {
    line.number('S').ifPresent(percent -> feedFactor = percent > 0 ? percent / 100 : feedFactor);
  }

  private double positive(CommandLine line, char letter, double otherwise) {
    double told = modes.millimetres(line.number(letter).orElse(0));
    return told > 0 ? told : otherwise;
  }
}
