package meltkeeper.alert.route;

import java.util.List;
import meltkeeper.protocol.gcode.Request;

/** Sends printers lines; plugged in from outside, for this room knows no wire. */
public interface Sending {

  /** No printer can be sent anything. */
  Sending NOWHERE =
      new Sending() {
        @Override
        public boolean reaches(String printer) {
          return false;
        }

        @Override
        public void send(String printer, List<Request.Ordered> lines) {
          throw new IllegalStateException(printer + " has no line of its own");
        }
      };

  /** True for a printer that can be sent lines. */
  boolean reaches(String printer);

  /**
   * Sends lines, and returns once the printer has taken them. Ends in bounded time.
   *
   * @throws UndeliveredException when it did not take them all, or does not know one
   */
  void send(String printer, List<Request.Ordered> lines)
      throws UndeliveredException, InterruptedException;
}
