package meltkeeper.plot;

/**
 * The straight rule from values to pixels.
 *
 * @param from a value
 * @param to another one
 * @param fromPixel where the first lies
 * @param toPixel where the second lies
 */
record Scale(double from, double to, double fromPixel, double toPixel) {

  double at(double value) {
    return fromPixel + (value - from) / (to - from) * (toPixel - fromPixel);
  }
}
