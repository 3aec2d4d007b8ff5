package meltkeeper.jam;

import java.util.Locale;

/** How it stands with a hot end's feed. */
public enum Level {
  /** Nothing speaks of a jam. */
  CLEAR(0),
  /** Less comes out than should, or soon will. */
  NARROWING(1),
  /** Filament is asked for and does not move. */
  STALLED(2),
  /** It prints, but too little is told to say. */
  BLIND(-1);

  private final int code;

  Level(int code) {
    this.code = code;
  }

  /** True when it calls: narrowing or stalled. */
  public boolean isJam() {
    return this == NARROWING || this == STALLED;
  }

  /** As the metric shows it: 0 clear, 1 narrowing, 2 stalled, -1 blind. */
  public int code() {
    return code;
  }

  /** As users read it: {@code clear}, {@code narrowing}, {@code stalled}, {@code blind}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
