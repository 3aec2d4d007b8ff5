package meltkeeper.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Stack;
import meltkeeper.cli.tune.Limits;
import meltkeeper.config.Settings;
import meltkeeper.protocol.Fault;
import picocli.CommandLine.IParameterPreprocessor;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** The option that tries limits of the jam watch; its value may be left out. */
final class TuneOption {

  private static final String USUAL = "usual";

  @Option(
      names = "--tune",
      arity = "0..1",
      paramLabel = "300h,1000h",
      fallbackValue = USUAL,
      preprocessor = OnlyIntervals.class,
      description = {
        "Try limits of the jam watch on recordings with",
        "known jams, noted in RECORDING.jams.csv; 100h",
        "to 10000h where none are named."
      })
  private Optional<String> limits = Optional.empty();

  /** A recording after the option is not taken for its value. */
  static final class OnlyIntervals implements IParameterPreprocessor {
    @Override
    @SuppressWarnings("JdkObsolete") // picocli's own signature
    public boolean preprocess(
        Stack<String> args, CommandSpec command, ArgSpec option, Map<String, Object> info) {
      if (args.isEmpty() || !args.peek().matches("[0-9]\\w*(,\\w*)*")) {
        args.push(USUAL);
      }
      return false;
    }
  }

  boolean isGiven() {
    return limits.isPresent();
  }

  /**
   * The limits to try, printing hours between two false alarms.
   *
   * @throws FaultsException for what is no interval
   */
  List<Double> wantedHours(Settings settings) {
    String text = limits.orElse(USUAL);
    if (text.equals(USUAL)) {
      return Limits.usual(Joints.falseAlarmHours(settings));
    }
    List<Fault> faults = new ArrayList<>();
    List<Double> hours = Limits.of(text, faults);
    if (!faults.isEmpty()) {
      throw new FaultsException(faults);
    }
    return hours;
  }
}
