package meltkeeper.protocol.gcode;

import java.util.ArrayList;
import java.util.List;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Rejected.Reason;
import meltkeeper.protocol.gcode.Field.Figure;

/**
 * Reads the fields of a report line, {@code ok T:214.9 /215.0 B:60.0 /60.0 @:54 B@:20}.
 *
 * <p>When noise ate a line's end, two reports stand in one line. Nothing tells whether some of the
 * first one was lost too, so it is told as torn, and only the last report of a line is believed: it
 * has kept its end. A name that comes twice, or an {@code ok} in the middle, shows the seam.
 */
final class FieldScanner {

  private static final int LETTERS_IN_KEY = 2;

  private final Cursor line;
  private final Decimal number = new Decimal();
  private final List<Field> fields = new ArrayList<>(8);
  private final List<Rejected> rejected = new ArrayList<>(0);
  private boolean acknowledges;

  FieldScanner(Cursor line) {
    this.line = line;
  }

  /** True when a report of values begins here; the cursor stays. */
  static boolean beginsAt(Cursor line) {
    return isOk(line) || lengthOfName(line) > 0;
  }

  /** True when a field stands somewhere in the line, as in the remains of a torn report. */
  static boolean occursIn(Cursor line) {
    line.moveTo(0);
    boolean afterLetter = false;
    for (; !line.atEnd(); line.skip()) {
      int name = afterLetter ? 0 : lengthOfName(line);
      int value = line.peek(name);
      if (name > 0 && (Cursor.isDigit(value) || value == '-' || value == ' ')) {
        return true;
      }
      afterLetter = Cursor.isLetter(line.peek());
    }
    return false;
  }

  Report.Values scan() {
    for (line.skipBlanks(); !line.atEnd(); line.skipBlanks()) {
      if (isOk(line)) {
        seam();
        line.take("OK");
        acknowledges = true;
        skipCounters();
      } else if (line.take("COUNT")) {
        skipToOk();
      } else if (!takeField()) {
        tear();
        skipToOk();
      }
    }
    if (endsTorn()) {
      tear();
    }
    return new Resolution(fields, rejected).values(acknowledges);
  }

  private static boolean isOk(Cursor line) {
    if (line.peek() != 'O' || line.peek(1) != 'K') {
      return false;
    }
    int next = line.peek(2);
    if (next == Cursor.END || Cursor.isBlank(next)) {
      return true;
    }
    int start = line.position();
    line.moveTo(start + 2);
    boolean isFollowedByField = lengthOfName(line) > 0;
    line.moveTo(start);
    return isFollowedByField;
  }

  /** Length of {@code T0:}, its colon included; 0 when no name stands here. */
  private static int lengthOfName(Cursor line) {
    int i = 0;
    while (i < LETTERS_IN_KEY && Cursor.isLetter(line.peek(i))) {
      i++;
    }
    if (line.peek(i) == '@') {
      i++;
    }
    if (i == 0) {
      return 0;
    }
    for (int digits = 0; digits < 2 && Cursor.isDigit(line.peek(i)); digits++) {
      i++;
    }
    return line.peek(i) == ':' ? i + 1 : 0;
  }

  private boolean takeField() {
    if (lengthOfName(line) == 0) {
      return false;
    }
    StringBuilder key = new StringBuilder(2);
    while (!Cursor.isDigit(line.peek()) && line.peek() != ':') {
      key.append((char) line.peek());
      line.skip();
    }
    long index = line.takeCount();
    line.take(':');
    Figure actual = takeFigure();
    if (!actual.isPresent()) {
      return false;
    }
    Figure target = Figure.ABSENT;
    line.skipBlanks();
    if (line.take('/')) {
      target = takeFigure();
      if (!target.isPresent()) {
        return false;
      }
      line.skipBlanks();
    }
    add(new Field(key.toString(), (int) index, actual, target));
    return skipRawValue();
  }

  private void add(Field field) {
    for (Field earlier : fields) {
      if (earlier.hasSameName(field)) {
        seam();
        break;
      }
    }
    fields.add(field);
  }

  private Figure takeFigure() {
    line.skipBlanks();
    if (line.takeNumber(number)) {
      return number.endsInPoint() ? Figure.ABSENT : Figure.of(number);
    }
    int start = line.position();
    boolean negative = line.take('-');
    if (line.take("NAN") || line.take('?')) {
      return Figure.UNDEFINED;
    }
    if (line.take("INF")) {
      return new Figure(negative ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY, 0);
    }
    line.moveTo(start);
    return Figure.ABSENT;
  }

  /** Some printers add a sensor's raw value in parentheses. */
  private boolean skipRawValue() {
    if (!line.take('(')) {
      return true;
    }
    return line.takeNumber(number) && line.take(')');
  }

  /** Behind {@code ok} some printers tell a line number and free places: {@code N12 P15 B3}. */
  private void skipCounters() {
    int start;
    do {
      line.skipBlanks();
      start = line.position();
      if (Cursor.isLetter(line.peek())) {
        line.skip();
      }
    } while (line.takeCount() >= 0 && (line.atEnd() || Cursor.isBlank(line.peek())));
    line.moveTo(start);
  }

  private void skipToOk() {
    while (!line.atEnd() && !isOk(line)) {
      line.skip();
    }
  }

  private void seam() {
    if (!fields.isEmpty()) {
      tear();
    }
  }

  private void tear() {
    fields.clear();
    rejected.add(new Rejected(Reason.TORN_LINE, "\"" + line.line() + "\""));
  }

  /**
   * True when the line's last number has lost digits: it has fewer decimals than others of its role
   * have. A target with as many as its own temperature has is whole, whatever the others print.
   */
  private boolean endsTorn() {
    if (fields.isEmpty()) {
      return false;
    }
    Field last = fields.get(fields.size() - 1);
    Figure end = last.last();
    if (last.target().isPresent() && !end.hasFewerDecimalsThan(last.actual())) {
      return false;
    }
    for (Field other : fields) {
      Figure likeness = last.target().isPresent() ? other.target() : other.actual();
      if (areAlike(last, other) && end.hasFewerDecimalsThan(likeness)) {
        return true;
      }
    }
    return false;
  }

  private boolean areAlike(Field one, Field other) {
    if (one.isTemperature()) {
      return other.isTemperature();
    }
    // Elsewhere than behind X: the field E: is a hot end's number.
    return fields.get(0).isNamed("X") && one.isPosition() && other.isPosition();
  }
}
