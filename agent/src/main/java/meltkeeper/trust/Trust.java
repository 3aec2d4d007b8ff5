package meltkeeper.trust;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.CertificateFactory;
import java.util.Optional;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;
import org.jspecify.annotations.Nullable;

/** Whose certificates a connection believes. */
public final class Trust {

  private Trust() {}

  /**
   * A context that trusts the certificates in a file and no others.
   *
   * @param caFile certificates in PEM, read anew at each call; empty for the computer's own
   * @throws IOException naming the file, when it cannot be used
   */
  public static SSLContext in(Optional<Path> caFile) throws IOException {
    try {
      TrustManagerFactory trust =
          TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
      trust.init(caFile.isPresent() ? certificates(caFile.get()) : theComputersOwn());
      SSLContext context = SSLContext.getInstance("TLS");
      context.init(null, trust.getTrustManagers(), null);
      return context;
    } catch (IOException | GeneralSecurityException e) {
      throw new IOException(
          "ca-file " + caFile.map(Path::toString).orElse("of the computer") + ": " + e, e);
    }
  }

  /** What the JDK takes as a wish for its own. */
  private static @Nullable KeyStore theComputersOwn() {
    return null;
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
        throw new IOException("it holds no certificate in PEM");
      }
    }
    return store;
  }
}
