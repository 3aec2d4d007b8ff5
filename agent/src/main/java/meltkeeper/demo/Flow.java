package meltkeeper.demo;

import java.util.List;

/** What the printer's troubles leave of the filament that it asks for. */
final class Flow {

  /** Squeezed in after a sudden block, mm; 1 to 5 is common practice, no source. */
  private static final double GIVE_MILLIMETRES = 3;

  private final List<Trouble> troubles;
  private double sinceBlock;
  private double sinceRunout;

  Flow(List<Trouble> troubles) {
    this.troubles = troubles;
  }

  /**
   * @param passed through the encoder, mm
   * @param melted mm
   * @param load of the feed gear over its grip, 0 to 1
   */
  record Fed(double passed, double melted, double load) {}

  Fed feed(long nanos, FeedMoves.Piece piece) {
    double asked = piece.millimetres();
    if (piece.tug() || asked == 0) {
      return new Fed(out(nanos) ? 0 : asked, 0, 0);
    }
    double openness = openness(nanos);
    double moved = asked * Nozzle.fed(piece.speed(), openness);
    double load = Nozzle.load(piece.speed(), openness);
    for (Trouble trouble : troubles) {
      if (trouble instanceof Trouble.Block block && nanos >= block.fromNanos()) {
        moved = Math.min(moved, Math.max(0, GIVE_MILLIMETRES - sinceBlock));
        sinceBlock += moved;
        load = 1;
      }
      if (trouble instanceof Trouble.Runout runout && nanos >= runout.fromNanos()) {
        moved = Math.min(moved, Math.max(0, runout.pathMillimetres() - sinceRunout));
        sinceRunout += moved;
      }
    }
    return new Fed(out(nanos) ? 0 : moved, moved, load);
  }

  private boolean out(long nanos) {
    return troubles.stream().anyMatch(t -> t instanceof Trouble.Runout && nanos >= t.fromNanos());
  }

  private double openness(long nanos) {
    double openness = 1;
    for (Trouble trouble : troubles) {
      if (trouble instanceof Trouble.Clog clog
          && nanos > clog.fromNanos()
          && nanos < clog.clearedNanos()) {
        double closed = (double) (nanos - clog.fromNanos()) / clog.closesInNanos();
        openness = Math.min(openness, Math.max(0, 1 - closed));
      }
    }
    return openness;
  }
}
