package meltkeeper.web.guard;

import io.javalin.config.JettyConfig;
import java.io.IOException;
import java.security.GeneralSecurityException;
import java.time.Duration;
import org.eclipse.jetty.server.Connector;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.NetworkConnectionLimit;
import org.eclipse.jetty.server.SecureRequestCustomizer;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.SslConnectionFactory;
import org.eclipse.jetty.server.handler.MinimumDataRateHandler;
import org.eclipse.jetty.util.ssl.SslContextFactory;

/** The one socket that is listened on, plain or encrypted, never both. */
public final class Doors {

  /** A client that sends or takes nothing for so long is let go. */
  private static final Duration PATIENCE = Duration.ofSeconds(20);

  /** A body that comes slower, bytes a second, is given up. */
  private static final long SLOWEST_BYTES_PER_SECOND = 1_000;

  private static final int MOST_CONNECTIONS = 512;

  private static final String IN_MEMORY = "in-memory";

  private Doors() {}

  /** Opens the socket of the settings, with bounds on how many come in and how slow they may be. */
  public static void open(WebSettings settings, JettyConfig jetty) {
    jetty.addConnector((server, http) -> connector(settings, server, http));
    jetty.modifyServer(
        server -> server.addBean(new NetworkConnectionLimit(MOST_CONNECTIONS, server)));
    jetty.modifyServletContextHandler(
        handler -> handler.insertHandler(new MinimumDataRateHandler(SLOWEST_BYTES_PER_SECOND, 0)));
  }

  private static Connector connector(WebSettings settings, Server server, HttpConfiguration http) {
    http.setSendServerVersion(false);
    http.setSendDateHeader(true);
    http.setRequestHeaderSize(8 * 1024);
    http.setIdleTimeout(PATIENCE.toMillis());
    http.addCustomizer(new EarlyAnswer());
    ServerConnector connector =
        settings
            .certificate()
            .map(files -> encrypted(files, server, http))
            .orElseGet(() -> new ServerConnector(server, new HttpConnectionFactory(http)));
    connector.setHost(settings.host());
    connector.setPort(settings.port());
    connector.setIdleTimeout(PATIENCE.toMillis());
    return connector;
  }

  private static ServerConnector encrypted(
      WebSettings.CertificateFiles files, Server server, HttpConfiguration http) {
    SecureRequestCustomizer secure = new SecureRequestCustomizer();
    secure.setSniHostCheck(false);
    HttpConfiguration https = new HttpConfiguration(http);
    https.addCustomizer(secure);
    SslContextFactory.Server tls = new SslContextFactory.Server();
    try {
      tls.setKeyStore(Certificates.store(files, IN_MEMORY));
    } catch (IOException | GeneralSecurityException e) {
      throw new IllegalStateException(
          "http.key-file and http.certificate-file cannot be used: " + e.getMessage(), e);
    }
    tls.setKeyStorePassword(IN_MEMORY);
    tls.setIncludeProtocols("TLSv1.3", "TLSv1.2");
    return new ServerConnector(
        server, new SslConnectionFactory(tls, "http/1.1"), new HttpConnectionFactory(https));
  }
}
