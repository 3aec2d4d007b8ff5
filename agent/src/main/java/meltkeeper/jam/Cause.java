package meltkeeper.jam;

/** What may be behind it: a suggestion with what to look at first, never a finding. */
public enum Cause {
  PARTIAL_CLOG("a partial clog", "look at nozzle and liner first"),
  HEAT_CREEP("heat creep", "look at the heat break's fan first"),
  GRINDING("filament ground by the feed gear", "look at gear and tension first"),
  BLOCK("a sudden block", "look at the nozzle first"),
  RUNOUT_OR_TANGLE("a runout or a tangle", "look at the spool first"),
  HEATER_FAULT("heater, sensor or a lead", "look at their leads first, switched off and cool");

  private final String name;
  private final String lookFirst;

  Cause(String name, String lookFirst) {
    this.name = name;
    this.lookFirst = lookFirst;
  }

  /** Reads as a suggestion: {@code "perhaps a partial clog: look at nozzle and liner first"}. */
  public String suggestion() {
    return "perhaps " + name + ": " + lookFirst;
  }
}
