package meltkeeper.protocol.gcode;

import java.util.function.Function;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.Rejected;

/** What came of reading a command line: the line, or why there is none. */
public sealed interface CommandScan permits CommandLine, CommandScan.Refused {

  /** Reads one line, without its end. Never throws for any bytes. */
  static CommandScan of(Payload line) {
    return new CommandScanner(line.array()).scan();
  }

  /** Calls the function for this case. */
  <R> R fold(Function<CommandLine, R> line, Function<Rejected, R> refused);

  /** A line that breaks a rule, and which. */
  record Refused(Rejected rejected) implements CommandScan {
    @Override
    public <R> R fold(Function<CommandLine, R> line, Function<Rejected, R> refused) {
      return refused.apply(rejected);
    }
  }
}
