package meltkeeper.config;

import java.time.Duration;
import java.util.Optional;
import java.util.regex.Pattern;

/** A duration as configurations and commands write it: a whole number and ms, s, m, h or d. */
public final class Span {

  private static final Pattern FORM = Pattern.compile("(\\d{1,9})(ms|s|m|h|d)");

  private Span() {}

  /** The duration, or empty when the text is none. */
  public static Optional<Duration> of(String text) {
    var parts = FORM.matcher(text);
    return parts.matches()
        ? Optional.of(unit(parts.group(2)).multipliedBy(Long.parseLong(parts.group(1))))
        : Optional.empty();
  }

  private static Duration unit(String name) {
    return switch (name) {
      case "ms" -> Duration.ofMillis(1);
      case "s" -> Duration.ofSeconds(1);
      case "m" -> Duration.ofMinutes(1);
      case "h" -> Duration.ofHours(1);
      default -> Duration.ofDays(1);
    };
  }
}
