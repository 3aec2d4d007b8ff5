package meltkeeper.config;

import java.util.Arrays;
import java.util.List;
import meltkeeper.protocol.Signal;

/** A part of the file with keys of its own. */
enum Section {
  ROOT("the file"),
  HTTP("http"),
  BROKER("brokers.NAME"),
  RULE("mappings.NAME[]"),
  TIME("mappings.NAME[].time"),
  READ("mappings.NAME[].read"),
  VALUE("mappings.NAME[].read.SIGNAL"),
  PRINTER("printers.NAME"),
  FROM("printers.NAME.from"),
  HOT_END("printers.NAME.hot-end"),
  MOTION("printers.NAME.motion"),
  KIND("kinds.NAME"),
  BELIEF("kinds.NAME.belief"),
  HABIT("kinds.NAME.habit"),
  CLEANING("kinds.NAME.cleaning"),
  JAM("jam"),
  COSTS("costs"),
  ALERTS("alerts"),
  ROUTE("alerts.routes.NAME"),
  QUIET("alerts.routes.NAME.quiet"),
  JAM_ACTION("alerts.jam-action"),
  COMMANDS("commands"),
  METRICS("metrics"),
  OTLP("metrics.otlp"),
  BACKUP("backup");

  private final String path;

  Section(String path) {
    this.path = path;
  }

  /** Where the section stands in the file, for a person. */
  String path() {
    return path;
  }

  /** The keys that may stand in it. */
  List<String> labels() {
    return this == READ
        ? Arrays.stream(Signal.values()).map(Signal::label).sorted().toList()
        : Keys.ALL.stream().filter(key -> key.section() == this).map(Key::label).toList();
  }
}
