package meltkeeper.protocol.mapping;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What a payload is as a whole. */
public enum PayloadForm {
  /** A JSON document (RFC 8259) that holds values. */
  JSON,
  /** One number in decimal digits. */
  NUMBER,
  /** One word or text. */
  TEXT;

  /** The name in configurations: {@code json}, {@code number}, {@code text}. */
  public String label() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The form of that label. */
  public static Optional<PayloadForm> ofLabel(String label) {
    return Arrays.stream(values()).filter(f -> f.label().equals(label)).findFirst();
  }
}
