package meltkeeper.protocol.gcode;

import meltkeeper.protocol.Decoder;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Origin.Direction;
import meltkeeper.protocol.Outlet;
import meltkeeper.protocol.Received;

/**
 * Reads the lines exchanged with one printer, in both directions.
 *
 * <p>Lines to the printer are followed by a {@link Tracker}. As soon as one of them fed filament,
 * the tracker alone tells what was commanded; before that, the printer's position reports do.
 * Readings are timed by arrival. Not safe for use by several threads.
 */
public final class GcodeDecoder implements Decoder {

  /** What RepRap-like printers print as the duty of a heater at full power (common practice). */
  public static final double DEFAULT_FULL_DUTY = 127;

  private final HotEnds hotEnds;
  private final Dialogue dialogue;

  /** A decoder for a printer that prints its duty as 0 to 127. */
  public GcodeDecoder(String printer) {
    this(printer, DEFAULT_FULL_DUTY);
  }

  /**
   * A decoder for one printer.
   *
   * @param printer the printer's name, not blank
   * @param fullDuty what the printer prints as the duty of a heater at full power; more than 0
   */
  public GcodeDecoder(String printer, double fullDuty) {
    if (!(fullDuty > 0 && fullDuty < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          fullDuty + " is not the duty at full power; allowed: a number above 0, such as 127");
    }
    this.hotEnds = new HotEnds(printer);
    this.dialogue = new Dialogue(fullDuty);
  }

  /**
   * Reads one line.
   *
   * @throws IllegalArgumentException for a message that is no line: a bug of the caller
   */
  @Override
  public void decode(Received received, Outlet outlet) {
    if (!(received.origin() instanceof Origin.Line line)) {
      throw new IllegalArgumentException(received.origin().describe() + " is no line's origin");
    }
    Utterance utterance = new Utterance(received, hotEnds);
    if (line.direction() == Direction.IN) {
      dialogue.hear(Report.of(received.payload()), utterance);
    } else {
      dialogue.overhear(CommandScan.of(received.payload()), utterance);
    }
    utterance.tell(outlet);
  }
}
