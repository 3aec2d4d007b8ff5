package meltkeeper.protocol.gcode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Rejected.Reason;

/** Reads one command line; the rules are those of {@link CommandLine}. */
final class CommandScanner {

  /** M codes followed by words of a language, not of a machine (common practice, no source). */
  private static final Set<Integer> TAKE_TEXT =
      Set.of(0, 1, 16, 23, 28, 30, 32, 33, 36, 117, 118, 486, 928);

  /** RS274/NGC section 3.3.1 allows five digits; a wire counts further in a long job. */
  private static final int LINE_NUMBER_DIGITS = 9;

  private final Checksum checksum;
  private final Cursor line;
  private final Decimal number = new Decimal();
  private final List<Word> words = new ArrayList<>(8);
  private OptionalLong lineNumber = OptionalLong.empty();
  private String text = "";
  private Optional<Rejected> fault = Optional.empty();

  CommandScanner(byte[] bytes) {
    this.checksum = Checksum.of(bytes);
    this.line = new Cursor(bytes, checksum.endOfWords());
  }

  CommandScan scan() {
    if (!checksum.isRight()) {
      refuse(
          Reason.BAD_CHECKSUM,
          "checksum " + checksum.told() + " where its bytes give " + checksum.computed());
      line.skipToEnd();
    }
    line.skipBlanks();
    boolean isBlockDelete = line.take('/');
    skipDelimiter();
    takeLineNumber();
    while (fault.isEmpty() && skipToItem()) {
      takeWord();
    }
    if (fault.isEmpty()) {
      fault = WordRules.faultOf(words);
    }
    return fault
        .<CommandScan>map(CommandScan.Refused::new)
        .orElseGet(() -> new CommandLine(lineNumber, isBlockDelete, words, text));
  }

  /** A percent sign alone begins and ends a file (RS274/NGC, from memory). */
  private void skipDelimiter() {
    if (line.take('%') && !line.atEnd()) {
      refuse(Reason.UNKNOWN_LINE, "a percent sign stands alone on its line");
      line.skipToEnd();
    }
  }

  private void takeLineNumber() {
    line.skipBlanks();
    if (!line.take('N')) {
      return;
    }
    line.takeLooseNumber(number);
    if (!number.isInteger()) {
      refuse(Reason.NOT_A_NUMBER, "N is followed by a whole number");
    } else if (number.digits() > LINE_NUMBER_DIGITS || number.value() < -1) {
      refuse(Reason.OUT_OF_RANGE, "a line number is at least -1, of at most 9 digits");
    } else {
      lineNumber = OptionalLong.of((long) number.value());
    }
  }

  /** Steps over blanks and comments in parentheses; false at the end or on a fault. */
  private boolean skipToItem() {
    line.skipBlanks();
    while (line.take('(')) {
      if (!skipComment()) {
        return false;
      }
      line.skipBlanks();
    }
    return !line.atEnd();
  }

  private boolean skipComment() {
    while (!line.atEnd()) {
      if (line.take(')')) {
        return true;
      }
      if (line.peek() == '(') {
        return refuse(Reason.UNKNOWN_LINE, "a comment stands within a comment");
      }
      line.skip();
    }
    return refuse(Reason.TORN_LINE, "a comment has no closing parenthesis");
  }

  private void takeWord() {
    int letter = line.peek();
    if (!Cursor.isLetter(letter)) {
      refuseItem(letter);
      return;
    }
    line.skip();
    if (letter == 'M' && words.isEmpty() && takesText()) {
      return;
    }
    line.takeLooseNumber(number);
    if (number.isComplete()) {
      takeNumbered((char) letter);
    } else if (!number.isEmpty() || letter == 'G' || letter == 'M') {
      refuse(Reason.NOT_A_NUMBER, (char) letter + " is followed by a number");
    } else if (line.peek() != '"' || skipQuoted()) {
      words.add(Word.mark((char) letter));
    }
  }

  private void takeNumbered(char letter) {
    double value = number.value();
    if (!Double.isFinite(value)) {
      refuse(Reason.OUT_OF_RANGE, letter + " is followed by a number too large");
      return;
    }
    words.add(Word.of(letter, value));
  }

  /** Takes a first M word with its text. There a blank ends the number: {@code M117 5 days}. */
  private boolean takesText() {
    int start = line.position();
    line.skipBlanks();
    boolean isWhole = line.takeNumber(number) && number.isInteger() && !number.isSigned();
    if (!isWhole || number.digits() > 4 || !TAKE_TEXT.contains((int) number.value())) {
      line.moveTo(start);
      return false;
    }
    words.add(Word.of('M', number.value()));
    text = line.rest();
    line.skipToEnd();
    return true;
  }

  /** The RepRap dialect quotes texts behind a letter; they say nothing to us. */
  private boolean skipQuoted() {
    line.skip();
    while (!line.atEnd()) {
      if (line.take('"')) {
        return true;
      }
      line.skip();
    }
    return refuse(Reason.TORN_LINE, "a quoted text has no end");
  }

  private void refuseItem(int found) {
    boolean isExpression = found == '#' || found == '[' || found == '=';
    boolean isRemains = Cursor.isDigit(found) || found == '.' || found == '-' || found == '*';
    if (isExpression) {
      refuse(Reason.NOT_A_NUMBER, "parameters and expressions are not evaluated");
    } else if (isRemains) {
      refuse(Reason.TORN_LINE, "a number stands without its letter");
    } else {
      refuse(Reason.UNKNOWN_LINE, "no word begins with this");
    }
  }

  private boolean refuse(Reason reason, String rule) {
    fault = Optional.of(new Rejected(reason, rule + ": \"" + line.line() + "\""));
    return false;
  }
}
