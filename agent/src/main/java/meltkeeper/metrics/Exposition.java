package meltkeeper.metrics;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A format that metrics are written in, chosen as RFC 9110, section 12.5.1, has it. */
public enum Exposition {
  PROMETHEUS_TEXT("text/plain", "0.0.4"),
  OPEN_METRICS("application/openmetrics-text", "1.0.0");

  private final String mediaType;
  private final String version;

  Exposition(String mediaType, String version) {
    this.mediaType = mediaType;
    this.version = version;
  }

  /** As the answer's header says it. */
  public String contentType() {
    return mediaType + "; version=" + version + "; charset=utf-8";
  }

  /**
   * The format that a reader likes best; Prometheus text when it does not care, or knows neither.
   *
   * @param accept the value of the header, if it was sent
   */
  public static Exposition preferred(Optional<String> accept) {
    List<MediaRange> ranges =
        Arrays.stream(accept.orElse("").split(",", -1))
            .map(range -> MediaRange.of(range.strip().toLowerCase(Locale.ROOT)))
            .toList();
    return OPEN_METRICS.quality(ranges) > PROMETHEUS_TEXT.quality(ranges)
        ? OPEN_METRICS
        : PROMETHEUS_TEXT;
  }

  /** How welcome it is, 0 to 1: the most particular range that it falls into says so. */
  private double quality(List<MediaRange> ranges) {
    double quality = 0;
    int particular = 0;
    for (MediaRange range : ranges) {
      int matched = range.matches(mediaType, version);
      if (matched > particular || (matched == particular && range.quality() > quality)) {
        quality = matched > 0 ? range.quality() : quality;
        particular = matched;
      }
    }
    return quality;
  }

  /** One element of the header. */
  private record MediaRange(String type, Optional<String> version, double quality) {

    private static final int NOT = 0;
    private static final int ANYTHING = 1;
    private static final int GROUP = 2;
    private static final int TYPE = 3;
    private static final int TYPE_AND_VERSION = 4;

    static MediaRange of(String text) {
      String[] pieces = text.split("\\s*;\\s*", -1);
      Optional<String> version = Optional.empty();
      double quality = 1;
      for (String piece : pieces) {
        if (piece.startsWith("version=")) {
          version = Optional.of(piece.substring("version=".length()).replace("\"", ""));
        } else if (piece.matches("q=[01](\\.\\d{0,3})?")) {
          quality = Math.min(1, Double.parseDouble(piece.substring(2)));
        }
      }
      return new MediaRange(pieces[0], version, quality);
    }

    int matches(String mediaType, String offered) {
      if (type.equals(mediaType)) {
        return version.isEmpty() ? TYPE : version.get().equals(offered) ? TYPE_AND_VERSION : NOT;
      }
      if (type.endsWith("/*") && mediaType.startsWith(type.substring(0, type.length() - 1))) {
        return GROUP;
      }
      return type.equals("*/*") ? ANYTHING : NOT;
    }
  }
}
