package meltkeeper.protocol.gcode;

import java.util.Optional;
import java.util.OptionalInt;

/** The modes of a printer that decide what the numbers of a move mean. */
public final class Modes {

  private static final double MILLIMETRES_PER_INCH = 25.4;

  private double millimetresPerUnit = 1;
  private boolean relative;
  private Optional<Boolean> filamentRelative = Optional.empty();
  private OptionalInt motion = OptionalInt.empty();

  /** Takes over the modes that a line sets. */
  public void set(CommandLine line) {
    for (Word word : line.words()) {
      if (word.letter() == 'G') {
        setG(word.tenths());
      } else if (word.letter() == 'M') {
        setM(word.tenths());
      }
    }
  }

  private void setG(int tenths) {
    switch (tenths) {
      case 0, 10, 20, 30 -> motion = OptionalInt.of(tenths / 10);
      case 200 -> millimetresPerUnit = MILLIMETRES_PER_INCH;
      case 210 -> millimetresPerUnit = 1;
      case 900 -> relative = false;
      case 910 -> relative = true;
      default -> {}
    }
  }

  private void setM(int tenths) {
    switch (tenths) {
      case 820 -> filamentRelative = Optional.of(false);
      case 830 -> filamentRelative = Optional.of(true);
      default -> {}
    }
  }

  /** A length in the units of the line, as millimetres. */
  public double millimetres(double units) {
    return units * millimetresPerUnit;
  }

  /** True when X, Y and Z words tell lengths, not places. */
  public boolean isRelative() {
    return relative;
  }

  /** The G code of the last motion, 0 to 3: rapid, straight, clockwise, anticlockwise. */
  public OptionalInt motion() {
    return motion;
  }

  /** True when E words tell lengths, not places. */
  public boolean filamentIsRelative() {
    return filamentRelative.orElse(relative);
  }

  /**
   * True when the line is a move: by its own word, or, bare of commands, by the last move's
   * (RS274/NGC section 3.3.7). Where G92 uses the axis words, the move is off (section 3.4).
   */
  public boolean moves(CommandLine line) {
    boolean isBare = true;
    boolean isMove = false;
    for (Word word : line.words()) {
      char letter = word.letter();
      isBare &= letter != 'G' && letter != 'M' && letter != 'T';
      if (letter == 'G') {
        switch (word.tenths()) {
          case 0, 10, 20, 30 -> isMove = true;
          case 100, 280, 920 -> {
            return false;
          }
          default -> {}
        }
      }
    }
    return isMove || (isBare && motion.isPresent());
  }
}
