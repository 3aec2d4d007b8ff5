package meltkeeper.demo;

import java.util.Random;

/**
 * The feed of a print: stretches at varying speed, travels with the filament drawn back, pauses at
 * each layer. Endless; the same seed gives the same moves.
 */
final class FeedMoves {

  /** One move, or the part of it that falls into a step; {@code millimetres} below 0 draws back. */
  record Piece(double seconds, double millimetres, boolean tug) {
    double speed() {
      return millimetres / seconds;
    }
  }

  private static final double TUG_MILLIMETRES = 0.8;
  private static final double TUG_SECONDS = 0.02;

  private final Random random;
  private Piece current = new Piece(0, 0, false);
  private boolean drawnBack;
  private boolean travelled;

  FeedMoves(Random random) {
    this.random = random;
  }

  /** What happens next, for at most that long. */
  Piece next(double seconds) {
    if (!(current.seconds() > 1e-9)) {
      current = plan();
    }
    Piece whole = current;
    double share = Math.min(1, seconds / whole.seconds());
    Piece taken = new Piece(whole.seconds() * share, whole.millimetres() * share, whole.tug());
    current =
        new Piece(
            whole.seconds() - taken.seconds(),
            whole.millimetres() - taken.millimetres(),
            whole.tug());
    return taken;
  }

  private Piece plan() {
    if (drawnBack && travelled) {
      drawnBack = false;
      return new Piece(TUG_SECONDS, TUG_MILLIMETRES, true);
    }
    if (drawnBack) {
      travelled = true;
      boolean layer = random.nextInt(8) == 0;
      return new Piece(layer ? between(1, 3) : between(0.1, 0.6), 0, false);
    }
    if (random.nextInt(5) == 0) {
      drawnBack = true;
      travelled = false;
      return new Piece(TUG_SECONDS, -TUG_MILLIMETRES, true);
    }
    double seconds = between(0.3, 4);
    return new Piece(seconds, seconds * between(1, 6), false);
  }

  private double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }
}
