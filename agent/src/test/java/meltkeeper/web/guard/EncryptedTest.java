package meltkeeper.web.guard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import javax.net.ssl.HttpsURLConnection;
import meltkeeper.testing.Certificates;
import meltkeeper.web.ServedShop;
import meltkeeper.web.guard.WebSettings.CertificateFiles;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page over TLS, by a key and a certificate that openssl made. */
final class EncryptedTest {

  @TempDir private Path folder;

  @Test
  void encrypted_isServed_andPlainIsNot() throws Exception {
    Certificates made = new Certificates(folder).issue("IP:127.0.0.1");
    try (ServedShop shop = new ServedShop(ServedShop.encrypted(folder))) {
      HttpsURLConnection connection =
          (HttpsURLConnection)
              URI.create("https://127.0.0.1:" + shop.port() + "/healthz").toURL().openConnection();
      connection.setSSLSocketFactory(made.client().getSocketFactory());

      assertThat(connection.getResponseCode()).isEqualTo(200);
      assertThatThrownBy(() -> shop.get("/healthz")).hasRootCauseInstanceOf(IOException.class);
    }
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
