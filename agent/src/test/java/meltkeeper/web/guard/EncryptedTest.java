package meltkeeper.web.guard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.CertificateFactory;
import java.util.Optional;
import java.util.Set;
import javax.net.ssl.HttpsURLConnection;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;
import meltkeeper.testing.Certificates;
import meltkeeper.web.ServedShop;
import meltkeeper.web.guard.WebSettings.CertificateFiles;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page over TLS, by a key and a certificate that openssl made. */
final class EncryptedTest {

  @TempDir private Path folder;

  private static WebSettings settings(Path folder) {
    return new WebSettings(
        "127.0.0.1",
        0,
        Set.of(),
        Optional.empty(),
        false,
        Optional.of(
            new CertificateFiles(folder.resolve("server.key"), folder.resolve("server.crt"))));
  }

  @Test
  void encrypted_isServed_andPlainIsNot() throws Exception {
    Certificates made = new Certificates(folder).issue("IP:127.0.0.1");
    try (ServedShop shop = new ServedShop(settings(folder))) {
      HttpsURLConnection connection =
          (HttpsURLConnection)
              URI.create("https://127.0.0.1:" + shop.port() + "/healthz").toURL().openConnection();
      connection.setSSLSocketFactory(trusting(made.authority()).getSocketFactory());

      assertThat(connection.getResponseCode()).isEqualTo(200);
      assertThatThrownBy(() -> shop.get("/healthz")).hasRootCauseInstanceOf(IOException.class);
    }
  }

  private static SSLContext trusting(Path authority) throws IOException, GeneralSecurityException {
    KeyStore store = KeyStore.getInstance(KeyStore.getDefaultType());
    store.load(null, null);
    try (InputStream in = Files.newInputStream(authority)) {
      store.setCertificateEntry(
          "shop", CertificateFactory.getInstance("X.509").generateCertificate(in));
    }
    TrustManagerFactory trust =
        TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
    trust.init(store);
    SSLContext context = SSLContext.getInstance("TLS");
    context.init(null, trust.getTrustManagers(), null);
    return context;
  }

  @Test
  void filesThatDoNotFit_areToldInWords() throws IOException, InterruptedException {
    new Certificates(folder).issue("IP:127.0.0.1");
    Path key = folder.resolve("server.key");
    Path chain = folder.resolve("server.crt");

    assertThat(meltkeeper.web.guard.Certificates.fault(new CertificateFiles(key, chain))).isEmpty();
    assertThat(meltkeeper.web.guard.Certificates.fault(new CertificateFiles(chain, chain)))
        .hasValueSatisfying(
            fault ->
                assertThat(fault.toString())
                    .contains("no BEGIN PRIVATE KEY", "openssl pkcs8 -topk8 -nocrypt"));
    assertThat(meltkeeper.web.guard.Certificates.fault(new CertificateFiles(key, key))).isPresent();
  }
}
