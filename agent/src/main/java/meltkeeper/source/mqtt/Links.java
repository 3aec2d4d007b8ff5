package meltkeeper.source.mqtt;

import java.net.URI;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/** Makes links to a broker, not opened yet. */
final class Links {

  private static final int PLAIN_PORT = 1883;
  private static final int TLS_PORT = 8883;
  private static final int PROTOCOL_FIVE = 5;

  private Links() {}

  static Link to(
      BrokerSettings broker,
      String clientId,
      Duration keptFor,
      List<String> filters,
      Delivery delivery,
      Timing timing)
      throws LinkException {
    URI url = broker.url();
    boolean encrypted = "ssl".equals(url.getScheme());
    String host = url.getHost();
    int port = url.getPort() >= 0 ? url.getPort() : encrypted ? TLS_PORT : PLAIN_PORT;
    Optional<Tls> tls =
        encrypted
            ? Optional.of(Tls.trusting(broker.caFile(), host.replaceAll("[\\[\\]]", "")))
            : Optional.empty();
    Link.Order order =
        new Link.Order(
            // The library is told of no TLS: that is the business of the socket.
            "tcp://" + host + ":" + port,
            clientId,
            keptFor,
            Credentials.of(broker),
            filters,
            new BrokerSocketFactory(tls),
            delivery,
            timing);
    return broker.protocol() == PROTOCOL_FIVE ? new LevelFive(order) : new LevelThree(order);
  }
}
