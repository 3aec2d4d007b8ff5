package meltkeeper.protocol.mapping;

import meltkeeper.protocol.Fault;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Outlet;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Sample;

/** Reads a payload that is itself the value, white space around it left out. */
final class PlainReader implements MessageReader {

  private final Cell cell = new Cell(false);
  private final ValueTeller teller;
  private final HotEnd hotEnd;

  PlainReader(String printer, ValueRule rule) {
    teller = new ValueTeller(rule, cell);
    hotEnd = new HotEnd(printer, rule.hotEnd());
  }

  @Override
  public void read(Received received, Outlet outlet) {
    String text = received.payload().text().strip();
    if (!received.payload().isUtf8()) {
      Fault fault = Fault.of("payload", text, "UTF-8").at(received.origin().describe());
      outlet.rejected(new Rejected(Rejected.Reason.TORN_LINE, fault.toString()));
      return;
    }
    cell.take(text);
    Sample sample = Sample.arrived(hotEnd, received.arrival().steadyNanos());
    teller.tell(received.retained() ? sample.asRetained() : sample, received.origin(), outlet);
  }
}
