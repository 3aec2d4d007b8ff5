package meltkeeper.pipeline;

import java.util.Map;
import meltkeeper.protocol.Decoder;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Outlet;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.Rejected;

/**
 * Who reads what: a decoder for each broker's messages and one for each printer's lines.
 *
 * @param byBroker by the broker's name in the configuration
 * @param byPrinter by the printer's name in the configuration
 */
public record Decoders(Map<String, Decoder> byBroker, Map<String, Decoder> byPrinter)
    implements Decoder {

  public Decoders {
    byBroker = Map.copyOf(byBroker);
    byPrinter = Map.copyOf(byPrinter);
  }

  @Override
  public void decode(Received received, Outlet outlet) {
    Origin origin = received.origin();
    if (origin instanceof Origin.Topic topic) {
      decodeBy(byBroker, topic.broker(), "broker", received, outlet);
    } else if (origin instanceof Origin.Line line) {
      decodeBy(byPrinter, line.printer(), "printer with a line of its own", received, outlet);
    }
  }

  private static void decodeBy(
      Map<String, Decoder> decoders, String name, String what, Received received, Outlet outlet) {
    Decoder decoder = decoders.get(name);
    if (decoder == null) {
      outlet.rejected(
          new Rejected(
              Rejected.Reason.UNKNOWN_PRINTER,
              "the configuration lists no " + what + " named \"" + name + "\""));
    } else {
      decoder.decode(received, outlet);
    }
  }
}
