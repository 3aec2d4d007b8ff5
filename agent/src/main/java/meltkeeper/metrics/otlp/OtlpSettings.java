package meltkeeper.metrics.otlp;

import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;

/**
 * Where the metrics are pushed to.
 *
 * @param url whole, as of {@code http://host:4318/v1/metrics}
 * @param every so often
 * @param headers sent along
 * @param tokenFile holds a bearer token, read at every push
 * @param timeout after which a push has failed
 */
public record OtlpSettings(
    URI url,
    Duration every,
    Map<String, String> headers,
    Optional<Path> tokenFile,
    Duration timeout) {

  public OtlpSettings {
    headers = Map.copyOf(headers);
  }
}
