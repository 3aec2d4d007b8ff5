package meltkeeper.alert.route;

import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import meltkeeper.store.AlertTopic;

/**
 * One route.
 *
 * @param topics that it wants
 * @param quiet hours in which only pressing topics call
 * @param timeout after which a try has failed
 */
public record RouteSettings(
    String name, Set<AlertTopic> topics, Optional<QuietHours> quiet, Duration timeout, Way way) {

  public RouteSettings {
    topics = Set.copyOf(topics);
  }

  /** How a route reaches the other side. The family is closed. */
  public sealed interface Way {}

  /**
   * Messages at an MQTT broker.
   *
   * @param broker by its name in the configuration
   * @param prefix of the topics
   */
  public record Mqtt(String broker, String prefix) implements Way {}

  /**
   * Requests to a web server.
   *
   * @param body the template; empty for the alert as JSON
   * @param caFile certificates in PEM that are trusted instead of the computer's own
   */
  public record Webhook(
      URI url,
      Optional<BodyTemplate> body,
      Map<String, String> headers,
      Optional<Path> tokenFile,
      Optional<Path> caFile)
      implements Way {
    public Webhook {
      headers = Map.copyOf(headers);
    }
  }

  /** The alert interface, version 2, of a Prometheus Alertmanager. */
  public record Alertmanager(URI url, Optional<Path> tokenFile, Optional<Path> caFile)
      implements Way {}

  /** Mail over SMTP. */
  public record Mail(
      String host,
      int port,
      Encryption encryption,
      String from,
      List<String> to,
      Optional<String> username,
      Optional<Path> passwordFile,
      Optional<Path> caFile)
      implements Way {
    public Mail {
      to = List.copyOf(to);
    }
  }

  /** How a connection to a mail server is encrypted. */
  public enum Encryption {
    /** Begun in the clear, then encrypted, or given up (RFC 3207). */
    STARTTLS,
    /** From the first byte on (RFC 8314). */
    TLS,
    NONE
  }

  /** A program that reads the alert as JSON on its standard input. */
  public record Command(Path program) implements Way {}
}
