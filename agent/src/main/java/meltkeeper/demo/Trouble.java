package meltkeeper.demo;

/** What goes wrong with the flow of plastic, and when it begins, nanoseconds since 1970. Closed. */
public sealed interface Trouble {

  long fromNanos();

  /**
   * The bore closes evenly until nothing is left of it.
   *
   * @param closesInNanos from open to shut, above 0
   * @param clearedNanos when somebody opens it again, since 1970
   */
  record Clog(long fromNanos, long closesInNanos, long clearedNanos) implements Trouble {

    /** One that nobody clears. */
    public Clog(long fromNanos, long closesInNanos) {
      this(fromNanos, closesInNanos, Long.MAX_VALUE);
    }
  }

  /** Something sits in the bore at once; a few millimetres more are squeezed in, then none. */
  record Block(long fromNanos) implements Trouble {}

  /**
   * The spool's end passes the encoder.
   *
   * @param pathMillimetres from the encoder to the melt, which is still fed
   */
  record Runout(long fromNanos, double pathMillimetres) implements Trouble {}
}
