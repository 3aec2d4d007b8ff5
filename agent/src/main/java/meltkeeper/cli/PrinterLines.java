package meltkeeper.cli;

import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import meltkeeper.alert.route.Sending;
import meltkeeper.alert.route.UndeliveredException;
import meltkeeper.protocol.gcode.Request;
import meltkeeper.source.PrinterSource;
import meltkeeper.source.Source;

/** The printers that have a line of their own, for what the owner wants them sent. */
record PrinterLines(Map<String, PrinterSource> printers) implements Sending {

  private static final Duration PATIENCE = Duration.ofSeconds(30);

  static PrinterLines of(List<Source> sources) {
    Map<String, PrinterSource> printers = new TreeMap<>();
    for (Source source : sources) {
      if (source instanceof PrinterSource printer) {
        printers.put(printer.name(), printer);
      }
    }
    return new PrinterLines(printers);
  }

  @Override
  public boolean reaches(String printer) {
    return printers.containsKey(printer);
  }

  @Override
  public void send(String printer, List<Request.Ordered> lines)
      throws UndeliveredException, InterruptedException {
    PrinterSource source =
        Optional.ofNullable(printers.get(printer))
            .orElseThrow(() -> UndeliveredException.forGood(printer + " has no line of its own"));
    try {
      List<String> unknown = source.send(lines, PATIENCE);
      if (!unknown.isEmpty()) {
        throw UndeliveredException.forGood(
            printer + " does not know " + String.join(", ", unknown));
      }
    } catch (IOException e) {
      throw UndeliveredException.forNow(String.valueOf(e.getMessage()));
    }
  }
}
