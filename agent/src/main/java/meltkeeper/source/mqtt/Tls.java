package meltkeeper.source.mqtt;

import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.CertificateFactory;
import java.util.Optional;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLParameters;
import javax.net.ssl.SSLSocket;
import javax.net.ssl.SSLSocketFactory;
import javax.net.ssl.TrustManagerFactory;

/** Encrypts a connection, to a peer whose certificate we trust and whose name it bears. */
final class Tls {

  private final SSLSocketFactory factory;
  private final String host;

  private Tls(SSLSocketFactory factory, String host) {
    this.factory = factory;
    this.host = host;
  }

  /**
   * @param caFile certificates in PEM, read anew at each try; empty for the computer's own
   * @param host the name or address that the peer's certificate must bear
   * @throws LinkException naming the file, when it cannot be used
   */
  static Tls trusting(Optional<Path> caFile, String host) throws LinkException {
    try {
      SSLContext context = SSLContext.getInstance("TLS");
      TrustManagerFactory trust =
          TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
      trust.init(caFile.isPresent() ? certificates(caFile.get()) : null);
      context.init(null, trust.getTrustManagers(), null);
      return new Tls(context.getSocketFactory(), host);
    } catch (IOException | GeneralSecurityException e) {
      throw new LinkException(
          "ca-file " + caFile.map(Path::toString).orElse("of the computer") + ": " + e);
    }
  }

  /** Shakes hands over a connected socket; the peer's certificate and name are checked here. */
  SSLSocket over(Socket raw, int port) throws IOException {
    SSLSocket socket = (SSLSocket) factory.createSocket(raw, host, port, true);
    SSLParameters parameters = socket.getSSLParameters();
    // The rules of RFC 2818, which is what the JDK offers for any protocol under this name.
    parameters.setEndpointIdentificationAlgorithm("HTTPS");
    socket.setSSLParameters(parameters);
    socket.startHandshake();
    return socket;
  }

  private static KeyStore certificates(Path file) throws IOException, GeneralSecurityException {
    KeyStore store = KeyStore.getInstance(KeyStore.getDefaultType());
    store.load(null, null);
    try (InputStream in = Files.newInputStream(file)) {
      int number = 0;
      for (Certificate certificate :
          CertificateFactory.getInstance("X.509").generateCertificates(in)) {
        store.setCertificateEntry("ca-" + number++, certificate);
      }
      if (number == 0) {
        throw new IOException("no certificate in " + file);
      }
    }
    return store;
  }
}
