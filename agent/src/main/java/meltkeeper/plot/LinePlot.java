package meltkeeper.plot;

import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * Curves over an axis, with what surrounds them.
 *
 * @param words its text alternative
 * @param x the axis across
 * @param y the axis up
 * @param lines 1 to 4, told apart by dash and colour
 * @param band shaded behind the lines
 * @param rugs up to 4 lanes of events above the x axis
 * @param mark an upright line, labelled
 */
public record LinePlot(
    Words words,
    Axis x,
    Axis y,
    List<Line> lines,
    Optional<Band> band,
    List<Rug> rugs,
    Optional<Mark> mark)
    implements Plot {

  public LinePlot {
    lines = List.copyOf(lines);
    rugs = List.copyOf(rugs);
    Check.count("the lines of plot \"" + words.title() + "\"", lines, 1, 4);
    Check.count("the rugs of plot \"" + words.title() + "\"", rugs, 0, 4);
  }

  /** Lines alone. */
  public static LinePlot of(Words words, Axis x, Axis y, Line... lines) {
    return new LinePlot(words, x, y, List.of(lines), Optional.empty(), List.of(), Optional.empty());
  }

  /** This plot with a band behind its lines. */
  public LinePlot with(Band shaded) {
    return new LinePlot(words, x, y, lines, Optional.of(shaded), rugs, mark);
  }

  /** This plot with a lane of events more. */
  public LinePlot with(Rug rug) {
    List<Rug> more = Stream.concat(rugs.stream(), Stream.of(rug)).toList();
    return new LinePlot(words, x, y, lines, band, more, mark);
  }

  /** This plot with a mark. */
  public LinePlot with(Mark upright) {
    return new LinePlot(words, x, y, lines, band, rugs, Optional.of(upright));
  }

  @Override
  public String svg() {
    return LineDrawing.of(this).svg();
  }

  /** Every x in it. */
  DoubleStream acrossValues() {
    return Stream.of(
            points().mapToDouble(Point::x),
            slices().mapToDouble(Band.Slice::x),
            rugs.stream().flatMap(rug -> rug.at().stream()).mapToDouble(Double::doubleValue),
            mark.stream().mapToDouble(Mark::x))
        .flatMapToDouble(values -> values);
  }

  /** Every y in it. */
  DoubleStream upValues() {
    return Stream.of(
            points().mapToDouble(Point::y),
            slices().mapToDouble(Band.Slice::low),
            slices().mapToDouble(Band.Slice::high))
        .flatMapToDouble(values -> values);
  }

  private Stream<Point> points() {
    return lines.stream().flatMap(line -> line.points().stream());
  }

  private Stream<Band.Slice> slices() {
    return band.stream().flatMap(shaded -> shaded.slices().stream());
  }
}
