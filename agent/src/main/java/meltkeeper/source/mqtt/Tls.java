package meltkeeper.source.mqtt;

import java.io.IOException;
import java.net.Socket;
import java.nio.file.Path;
import java.util.Optional;
import javax.net.ssl.SSLParameters;
import javax.net.ssl.SSLSocket;
import javax.net.ssl.SSLSocketFactory;
import meltkeeper.trust.Trust;

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
      return new Tls(Trust.in(caFile).getSocketFactory(), host);
    } catch (IOException e) {
      throw new LinkException(String.valueOf(e.getMessage()));
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
}
