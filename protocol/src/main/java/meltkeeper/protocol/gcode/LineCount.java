package meltkeeper.protocol.gcode;

/**
 * Which numbered lines have been counted, so that a line sent again counts once.
 *
 * <p>Only a resend request makes repeats: elsewhere line numbers may repeat freely (RS274/NGC
 * section 3.3.1).
 */
final class LineCount {

  private static final long NONE = -1;

  private long highest = NONE;
  private long repeatFrom = NONE;
  private long repeatTo = NONE;

  /** The printer asks for all lines from this one on again. */
  void resendFrom(long lineNumber) {
    if (lineNumber <= highest) {
      repeatFrom = lineNumber;
      repeatTo = highest;
    }
  }

  /** The numbers begin anew behind this one. */
  void reset(long lineNumber) {
    highest = lineNumber;
    endRepeats();
  }

  /** Counts a line; false when it was counted before. */
  boolean counts(long lineNumber) {
    boolean isRepeat = repeatTo != NONE && lineNumber >= repeatFrom && lineNumber <= repeatTo;
    if (isRepeat) {
      return false;
    }
    if (lineNumber > repeatTo) {
      endRepeats();
    }
    highest = Math.max(highest, lineNumber);
    return true;
  }

  private void endRepeats() {
    repeatFrom = NONE;
    repeatTo = NONE;
  }
}
