package meltkeeper.cli.doctor;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import meltkeeper.config.From;
import meltkeeper.config.PrinterSettings;
import meltkeeper.config.Settings;
import meltkeeper.protocol.Signal;

/** What a printer was heard to tell, against what its mapping promises and the jam watch needs. */
final class PrinterCheck {

  /** So many readings of one value, of something that never stands still, are no chance. */
  private static final long MANY = 10;

  private static final Set<Signal> LIVELY = Set.of(Signal.HOT_END_TEMPERATURE, Signal.HEATER_DUTY);

  private final Settings settings;
  private final Heard heard;
  private final Map<String, Instant> byTheAgent;

  /**
   * @param byTheAgent when a running agent last heard printers that only one program can listen to
   */
  PrinterCheck(Settings settings, Heard heard, Map<String, Instant> byTheAgent) {
    this.settings = settings;
    this.heard = heard;
    this.byTheAgent = Map.copyOf(byTheAgent);
  }

  List<Finding> findings() {
    List<Finding> findings = new ArrayList<>();
    if (settings.printers().isEmpty()) {
      findings.add(
          Finding.bad("printers", "none is listed", "list them under printers: docs/configure.md"));
    }
    for (PrinterSettings printer : settings.printers().values()) {
      if (heard.hears(printer.name())) {
        hears(printer, findings);
      } else if (byTheAgent.containsKey(printer.name())) {
        findings.add(
            Finding.well(
                about(printer), "the running agent heard it at " + byTheAgent.get(printer.name())));
      } else {
        findings.add(
            Finding.weak(
                about(printer),
                "nothing was heard",
                "switch it on; else see that its topics are those of its mapping, or its port is"
                    + " the right one: meltkeeper listen shows what a broker has"));
      }
    }
    heard
        .faults()
        .forEach(
            (reason, first) ->
                findings.add(
                    Finding.weak(
                        "messages",
                        "not read: " + reason.label() + ", such as: " + first.detail(),
                        "mend the mapping, or narrow its topic")));
    return findings;
  }

  private void hears(PrinterSettings printer, List<Finding> findings) {
    Set<Signal> promised = promised(printer);
    Set<Signal> missing = new TreeSet<>(promised);
    missing.removeIf(signal -> heard.course(printer.name(), signal).isPresent());
    missing.remove(Signal.NOTICE);
    if (missing.isEmpty()) {
      findings.add(Finding.well(about(printer), "heard, with all that is mapped"));
    } else {
      findings.add(
          Finding.weak(
              about(printer),
              "heard, but never " + labels(missing),
              "see that the mapping's paths are those of the payload; some printers tell these"
                  + " only while they print"));
    }
    for (Signal signal : LIVELY) {
      heard
          .course(printer.name(), signal)
          .filter(course -> course.readings() >= MANY && course.changes() == 0)
          .filter(course -> isHot(printer) || signal != Signal.HEATER_DUTY)
          .ifPresent(
              course ->
                  findings.add(
                      Finding.weak(
                          about(printer),
                          "%s stood at %s in %d readings"
                              .formatted(signal.label(), course.last(), course.readings()),
                          "map the field that moves: this one may be a setting or a copy")));
    }
    sight(printer).ifPresent(findings::add);
  }

  private boolean isHot(PrinterSettings printer) {
    return heard
        .course(printer.name(), Signal.HOT_END_TEMPERATURE)
        .filter(course -> Double.parseDouble(course.last()) > 50)
        .isPresent();
  }

  /**
   * The same needs as the jam watch's own: filament asked for, and one thing to hold against it.
   */
  private Optional<Finding> sight(PrinterSettings printer) {
    boolean asked = tells(printer, Signal.FILAMENT_COMMANDED);
    boolean answered =
        tells(printer, Signal.FILAMENT_MEASURED)
            || tells(printer, Signal.HEATER_DUTY)
            || tells(printer, Signal.FEED_LOAD);
    if (asked && answered) {
      return Optional.empty();
    }
    return Optional.of(
        Finding.weak(
            about(printer),
            "the jam watch will be blind: "
                + (asked
                    ? "nothing tells what became of the filament asked for"
                    : "the filament asked for is not told"),
            "let it print and ask again; if it stays so, "
                + (asked
                    ? "map filament-measured if there is an encoder, else heater-duty"
                    : "map filament-commanded, a running total in millimetres"
                        + (answered ? "" : ", and filament-measured or heater-duty"))));
  }

  private boolean tells(PrinterSettings printer, Signal signal) {
    return heard.course(printer.name(), signal).isPresent();
  }

  private Set<Signal> promised(PrinterSettings printer) {
    Set<Signal> promised = new TreeSet<>(Set.of(Signal.HOT_END_TEMPERATURE));
    if (printer.from() instanceof From.Mqtt mqtt) {
      Optional.ofNullable(settings.mappings().get(mqtt.mapping()))
          .ifPresent(
              mapping ->
                  mapping
                      .rules()
                      .forEach(
                          rule -> rule.values().forEach(value -> promised.add(value.signal()))));
    }
    return promised;
  }

  private static String labels(Set<Signal> signals) {
    return String.join(", ", signals.stream().map(Signal::label).toList());
  }

  private static String about(PrinterSettings printer) {
    return "printer " + printer.name();
  }
}
