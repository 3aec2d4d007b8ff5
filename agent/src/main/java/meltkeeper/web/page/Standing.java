package meltkeeper.web.page;

import java.util.Locale;

/** How it stands with a hot end, the most pressing first. */
public enum Standing {
  STALLED("✕"),
  NARROWING("▼"),
  SILENT("…"),
  OVERDUE("!"),
  BLIND("?"),
  WORKING("▶"),
  PAUSED("❚❚"),
  IDLE("○"),
  UNHEARD("–");

  private final String sign;

  Standing(String sign) {
    this.sign = sign;
  }

  /** A sign that tells it from the others without colour. */
  public String sign() {
    return sign;
  }

  /** The key of its words, and its class in the stylesheet. */
  public String key() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** True when somebody should go and look. */
  public boolean isTrouble() {
    return this == STALLED || this == NARROWING;
  }
}
