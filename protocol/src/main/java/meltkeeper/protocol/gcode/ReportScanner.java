package meltkeeper.protocol.gcode;

import java.util.Locale;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Rejected.Reason;

/** Tells one kind of report line from another; the values are left to {@link FieldScanner}. */
final class ReportScanner {

  private static final Report CHATTER = new Report.Chatter();
  private static final Report BUSY = new Report.Busy();
  private static final Report RESTART = new Report.Restart();
  private static final Report NO_STORAGE_JOB = new Report.NoStorageJob();

  /** What words of no known form are. */
  private enum Otherwise {
    CHATTER,
    UNREADABLE
  }

  private final Cursor line;

  private ReportScanner(byte[] bytes) {
    this.line = new Cursor(bytes);
  }

  static Report scan(byte[] bytes) {
    return new ReportScanner(bytes).scan();
  }

  private Report scan() {
    line.skipBlanks();
    if (line.atEnd()) {
      return CHATTER;
    }
    if (FieldScanner.beginsAt(line)) {
      return new FieldScanner(line).scan();
    }
    if (line.take("ECHO:")) {
      line.skipBlanks();
      return says(Otherwise.CHATTER);
    }
    if (line.take("//")) {
      line.skipBlanks();
      return line.take("ACTION:") ? new Report.Action(line.rest()) : says(Otherwise.CHATTER);
    }
    return says(Otherwise.UNREADABLE);
  }

  private Report says(Otherwise otherwise) {
    if (line.take("BUSY:")) {
      return BUSY;
    }
    if (line.take("SD PRINTING BYTE ")) {
      return storageJob();
    }
    if (line.take("NOT SD PRINTING") || line.take("DONE PRINTING FILE")) {
      return NO_STORAGE_JOB;
    }
    if (line.take("RESEND:") || line.take("RS ")) {
      return resend();
    }
    if (line.take("ERROR:") || line.take("!!")) {
      return failure();
    }
    if (line.take("UNKNOWN COMMAND")) {
      return unknownCommand();
    }
    return words(otherwise);
  }

  private Report words(Otherwise otherwise) {
    int start = line.position();
    if (line.take("START") && line.atEnd()) {
      return RESTART;
    }
    line.moveTo(start);
    if (line.take("WAIT") && line.atEnd()) {
      return CHATTER;
    }
    line.moveTo(start);
    boolean isOfTheStorage = line.take("FILE ") || line.take("SD ");
    boolean isOfTheController = line.take("FIRMWARE_NAME:") || line.take("CAP:");
    boolean isChatter = isOfTheStorage || isOfTheController || otherwise == Otherwise.CHATTER;
    return isChatter ? CHATTER : unreadable();
  }

  private Report storageJob() {
    long done = line.takeCount();
    if (done < 0 || !line.take('/')) {
      return torn();
    }
    long total = line.takeCount();
    if (total < 0 || !line.atEnd()) {
      return torn();
    }
    if (total == 0) {
      return NO_STORAGE_JOB;
    }
    if (!Report.StorageJob.isPossible(done, total)) {
      return new Report.Unreadable(
          new Rejected(
              Reason.OUT_OF_RANGE,
              "byte " + done + " of a file; allowed: 0 to its length, " + total));
    }
    return new Report.StorageJob(done, total);
  }

  private Report resend() {
    line.skipBlanks();
    line.take('N');
    long lineNumber = line.takeCount();
    return lineNumber < 0 || !line.atEnd() ? torn() : new Report.Resend(lineNumber);
  }

  private Report failure() {
    line.skipBlanks();
    if (line.take("UNKNOWN COMMAND")) {
      return unknownCommand();
    }
    String text = line.rest();
    String lower = text.toLowerCase(Locale.ROOT);
    // What went wrong on the wire is mended by sending again, and is no failure of the printer.
    boolean isOfTheWire = lower.contains("checksum") || lower.contains("line number");
    return isOfTheWire ? CHATTER : new Report.Failure(text);
  }

  private Report unknownCommand() {
    line.take(':');
    String quoted = line.rest().toUpperCase(Locale.ROOT);
    return new Report.UnknownCommand(quoted.replace("\"", "").strip());
  }

  private Report torn() {
    return new Report.Unreadable(new Rejected(Reason.TORN_LINE, "\"" + line.line() + "\""));
  }

  private Report unreadable() {
    Reason reason = FieldScanner.occursIn(line) ? Reason.TORN_LINE : Reason.UNKNOWN_LINE;
    return new Report.Unreadable(new Rejected(reason, "\"" + line.line() + "\""));
  }
}
