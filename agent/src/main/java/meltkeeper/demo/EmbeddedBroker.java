package meltkeeper.demo;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.util.Map;
import org.apache.activemq.artemis.api.core.TransportConfiguration;
import org.apache.activemq.artemis.core.config.Configuration;
import org.apache.activemq.artemis.core.config.impl.ConfigurationImpl;
import org.apache.activemq.artemis.core.remoting.impl.netty.NettyAcceptorFactory;
import org.apache.activemq.artemis.core.server.JournalType;
import org.apache.activemq.artemis.core.server.embedded.EmbeddedActiveMQ;
import org.apache.activemq.artemis.core.settings.impl.AddressFullMessagePolicy;
import org.apache.activemq.artemis.core.settings.impl.AddressSettings;

/**
 * An MQTT broker in this process, protocol levels 3.1.1 and 5, on a free port of the loopback
 * address. It keeps nothing on disk and asks for no password.
 */
public final class EmbeddedBroker implements AutoCloseable {

  private static final String ANY_ADDRESS = "#";

  private final EmbeddedActiveMQ broker = new EmbeddedActiveMQ();
  private final URI url;

  /**
   * Starts it, and returns once it takes connections.
   *
   * @throws IllegalStateException when it cannot start, with the broker's own words
   */
  public EmbeddedBroker() {
    int port = freePort();
    url = URI.create("tcp://127.0.0.1:" + port);
    broker.setConfiguration(configuration(port));
    try {
      broker.start();
    } catch (Exception e) {
      throw new IllegalStateException("the demo's broker did not start: " + e.getMessage(), e);
    }
  }

  /** Where it listens, {@code tcp://127.0.0.1:41234}. */
  public URI url() {
    return url;
  }

  /** Stops it and lets go of its port and threads. May be called again. */
  @Override
  public void close() {
    try {
      broker.stop();
    } catch (Exception e) {
      throw new IllegalStateException("the demo's broker did not stop: " + e.getMessage(), e);
    }
  }

  private static Configuration configuration(int port) {
    Configuration configuration = new ConfigurationImpl();
    configuration.setPersistenceEnabled(false);
    configuration.setJournalType(JournalType.NIO);
    configuration.setSecurityEnabled(false);
    configuration.setJMXManagementEnabled(false);
    configuration.addAddressSetting(
        ANY_ADDRESS,
        new AddressSettings()
            .setAutoCreateQueues(true)
            .setAutoCreateAddresses(true)
            .setAddressFullMessagePolicy(AddressFullMessagePolicy.BLOCK));
    configuration.addAcceptorConfiguration(
        new TransportConfiguration(
            NettyAcceptorFactory.class.getName(),
            Map.of("host", "127.0.0.1", "port", port, "protocols", "MQTT", "useEpoll", false),
            "mqtt"));
    return configuration;
  }

  private static int freePort() {
    try (ServerSocket probe = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return probe.getLocalPort();
    } catch (IOException e) {
      throw new UncheckedIOException("no port is free on the loopback address", e);
    }
  }
}
