package meltkeeper.jam.sim;

import meltkeeper.protocol.Reading;

/** Which signals a printer publishes. */
public enum Signal {
  ENCODER("with encoder"),
  NO_ENCODER("without encoder"),
  TEMPERATURE("temperature only");

  private final String label;

  Signal(String label) {
    this.label = label;
  }

  /** As the table shows it. */
  public String label() {
    return label;
  }

  /** True when a printer of that kind tells this. */
  public boolean tells(Reading reading) {
    boolean encoder = reading instanceof Reading.FilamentMeasured;
    boolean load = reading instanceof Reading.FeedLoad;
    boolean duty = reading instanceof Reading.HeaterDuty;
    return switch (this) {
      case ENCODER -> true;
      case NO_ENCODER -> !encoder && !load;
      case TEMPERATURE -> !encoder && !load && !duty;
    };
  }
}
