package meltkeeper.protocol.gcode;

import java.util.List;
import java.util.Optional;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Rejected.Reason;

/**
 * What the words of one line may be together: RS274/NGC section 3.3.5 on repeated items, 3.4 on
 * modal groups. Words that repeat tell of two lines run into one.
 */
final class WordRules {

  private static final int MOST_M_WORDS = 4;
  private static final int SET_LINE_NUMBER = 1100;
  private static final int N = 1 << ('N' - 'A');
  private static final double HIGHEST_CODE = 9999;

  /** Ten times a code is "close to an integer", section 3.3.2.1. */
  private static final double CLOSE = 1e-4;

  private WordRules() {}

  static Optional<Rejected> faultOf(List<Word> words) {
    if (words.stream().noneMatch(WordRules::isCommand) && words.stream().anyMatch(Word::isMark)) {
      return refused(Reason.UNKNOWN_LINE, "letters without a command");
    }
    int letters = 0;
    int groups = 0;
    int mWords = 0;
    for (Word word : words) {
      if (isCommand(word) && !isCode(word)) {
        return refused(Reason.OUT_OF_RANGE, word + "; a code has one decimal, up to 9999");
      }
      int letter = isCommand(word) ? 0 : 1 << (word.letter() - 'A');
      int group = word.letter() == 'G' ? groupOf(word) : 0;
      if ((letters & letter) != 0 || (groups & group) != 0) {
        return refused(Reason.TORN_LINE, word + " repeats another word of its line");
      }
      letters |= letter;
      groups |= group;
      mWords += word.letter() == 'M' ? 1 : 0;
    }
    if (mWords > MOST_M_WORDS) {
      return refused(Reason.TORN_LINE, mWords + " M words; at most 4 stand on a line");
    }
    boolean isNumberedWithin = (letters & N) != 0 && !setsLineNumber(words);
    return isNumberedWithin
        ? refused(Reason.TORN_LINE, "a line number stands behind other words")
        : Optional.empty();
  }

  private static boolean isCommand(Word word) {
    return word.letter() == 'G' || word.letter() == 'M';
  }

  private static boolean setsLineNumber(List<Word> words) {
    return words.stream()
        .anyMatch(word -> word.letter() == 'M' && word.tenths() == SET_LINE_NUMBER);
  }

  private static boolean isCode(Word word) {
    double tenths = word.number().orElse(-1) * 10;
    return tenths >= 0
        && tenths <= HIGHEST_CODE * 10
        && Math.abs(tenths - Math.rint(tenths)) <= CLOSE;
  }

  /** One bit for each modal group that matters to a filament printer; 0 for none of them. */
  private static int groupOf(Word word) {
    return switch (word.tenths()) {
      case 0, 10, 20, 30 -> 1;
      case 200, 210 -> 2;
      case 900, 910 -> 4;
      default -> 0;
    };
  }

  private static Optional<Rejected> refused(Reason reason, String detail) {
    return Optional.of(new Rejected(reason, detail));
  }
}
