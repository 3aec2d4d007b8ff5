package meltkeeper.plot;

/** A drawing that can be written into a page. */
public sealed interface Plot permits LinePlot, BarPlot, Gauge {

  /** One complete {@code <svg>} element, escaped, for use as it is in HTML or as a file. */
  String svg();
}
