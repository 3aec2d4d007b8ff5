package meltkeeper.web.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import meltkeeper.part.Moments;
import meltkeeper.pipeline.Minute;
import meltkeeper.plot.Axis;
import meltkeeper.plot.Line;
import meltkeeper.plot.LinePlot;
import meltkeeper.plot.Point;
import meltkeeper.plot.Words;

/** Plots of the last hours of a hot end. Hours count back from now. */
final class TrailPlots {

  private static final double HOUR_NANOS = 3.6e12;
  private static final double HOURS = 6;

  /** Fewer millimetres a minute than this say little of a ratio. */
  private static final long LEAST_MICROMETRES = 2_000;

  private static final double HIGHEST_RATIO = 150;

  private TrailPlots() {}

  static Optional<String> temperature(List<Minute> minutes, Frame frame) {
    List<Point> now = new ArrayList<>();
    List<Point> asked = new ArrayList<>();
    for (Minute minute : recent(minutes, frame)) {
      double hours = hours(minute, frame);
      minute.celsius().ifPresent(c -> now.add(new Point(hours, c)));
      minute.targetCelsius().ifPresent(c -> asked.add(new Point(hours, c)));
    }
    if (now.size() < 2) {
      return Optional.empty();
    }
    List<Line> lines = new ArrayList<>();
    lines.add(new Line(frame.say("plot.now"), now));
    if (asked.size() >= 2) {
      lines.add(new Line(frame.say("plot.asked"), asked));
    }
    double least = now.stream().mapToDouble(Point::y).min().orElse(0);
    double most = now.stream().mapToDouble(Point::y).max().orElse(0);
    return Optional.of(
        LinePlot.of(
                new Words(
                    frame.say("plot.temperature"),
                    frame.say("plot.temperature-words", whole(least), whole(most))),
                across(frame),
                Axis.of(frame.say("plot.temperature-axis"), "°C"),
                lines.toArray(new Line[0]))
            .svg());
  }

  static Optional<String> feed(List<Minute> minutes, Frame frame) {
    List<Point> ratio = new ArrayList<>();
    if (minutes.stream().allMatch(minute -> minute.measuredMicrometres() == 0)) {
      return Optional.empty();
    }
    for (Minute minute : recent(minutes, frame)) {
      if (minute.commandedMicrometres() >= LEAST_MICROMETRES) {
        double percent = 100.0 * minute.measuredMicrometres() / minute.commandedMicrometres();
        ratio.add(new Point(hours(minute, frame), Math.min(HIGHEST_RATIO, percent)));
      }
    }
    if (ratio.size() < 2) {
      return Optional.empty();
    }
    double latest = ratio.get(ratio.size() - 1).y();
    return Optional.of(
        LinePlot.of(
                new Words(frame.say("plot.feed"), frame.say("plot.feed-words", whole(latest))),
                across(frame),
                Axis.of(frame.say("plot.feed-axis"), "%").reaching(0, 100),
                new Line(frame.say("plot.feed-line"), ratio))
            .svg());
  }

  private static Axis across(Frame frame) {
    return Axis.of(frame.say("plot.hours"), "h").reaching(0);
  }

  private static List<Minute> recent(List<Minute> minutes, Frame frame) {
    return minutes.stream()
        .filter(minute -> hours(minute, frame) >= -HOURS && hours(minute, frame) <= 0)
        .toList();
  }

  private static double hours(Minute minute, Frame frame) {
    return (minute.fromNanos() - frame.times().nowNanos()) / HOUR_NANOS;
  }

  /** The beginning of the oldest minute that is shown. */
  static Optional<String> since(List<Minute> minutes, Frame frame) {
    return recent(minutes, frame).stream()
        .findFirst()
        .map(minute -> frame.times().moment(Moments.instant(minute.fromNanos())));
  }

  private static String whole(double value) {
    return String.format(Locale.ROOT, "%.0f", value);
  }
}
