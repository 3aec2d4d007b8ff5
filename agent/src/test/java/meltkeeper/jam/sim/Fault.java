package meltkeeper.jam.sim;

import java.util.Locale;

/** What goes wrong. */
public enum Fault {
  NONE,
  CLOG,
  HEAT_CREEP,
  GRINDING,
  BLOCK,
  RUNOUT,
  TANGLE;

  /** As the table shows it. */
  public String label() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
