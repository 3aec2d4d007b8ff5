package meltkeeper.testing;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.CertificateFactory;
import java.util.ArrayList;
import java.util.List;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;

/** A certificate authority of our own, and a server's certificate by it, made by openssl. */
public record Certificates(Path folder) {

  private static final String PASSWORD = "plover";

  public Path authority() {
    return folder.resolve("ca.crt");
  }

  /**
   * Makes them anew.
   *
   * @param name what the certificate is for, as openssl writes it: {@code IP:127.0.0.1}
   */
  public Certificates issue(String name) throws IOException, InterruptedException {
    openssl(
        "req",
        "-x509",
        "-newkey",
        "ec",
        "-pkeyopt",
        "ec_paramgen_curve:prime256v1",
        "-nodes",
        "-keyout",
        "ca.key",
        "-out",
        "ca.crt",
        "-days",
        "2",
        "-subj",
        "/CN=Plant label authority");
    openssl(
        "req",
        "-newkey",
        "ec",
        "-pkeyopt",
        "ec_paramgen_curve:prime256v1",
        "-nodes",
        "-keyout",
        "server.key",
        "-out",
        "server.csr",
        "-subj",
        "/CN=server");
    Files.writeString(folder.resolve("names"), "subjectAltName=" + name + "\n");
    openssl(
        "x509",
        "-req",
        "-in",
        "server.csr",
        "-CA",
        "ca.crt",
        "-CAkey",
        "ca.key",
        "-CAcreateserial",
        "-out",
        "server.crt",
        "-days",
        "2",
        "-extfile",
        "names");
    return this;
  }

  /** Lines of the broker's configuration that make its listener use them. */
  public String[] settings() {
    return new String[] {
      "certfile " + folder.resolve("server.crt"), "keyfile " + folder.resolve("server.key")
    };
  }

  /** A context for a server that shows the server's certificate. */
  public SSLContext server() throws IOException, InterruptedException, GeneralSecurityException {
    openssl(
        "pkcs12",
        "-export",
        "-inkey",
        "server.key",
        "-in",
        "server.crt",
        "-out",
        "server.p12",
        "-passout",
        "pass:" + PASSWORD);
    KeyStore store =
        KeyStore.getInstance(folder.resolve("server.p12").toFile(), PASSWORD.toCharArray());
    KeyManagerFactory keys = KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
    keys.init(store, PASSWORD.toCharArray());
    SSLContext context = SSLContext.getInstance("TLS");
    context.init(keys.getKeyManagers(), null, null);
    return context;
  }

  /** A context for a client that trusts this authority alone. */
  public SSLContext client() throws IOException, GeneralSecurityException {
    KeyStore store = KeyStore.getInstance(KeyStore.getDefaultType());
    store.load(null, null);
    try (InputStream in = Files.newInputStream(authority())) {
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

  private void openssl(String... arguments) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(List.of(arguments));
    command.add(0, RealParts.find("openssl").toString());
    int code =
        new ProcessBuilder(command)
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve("openssl.log").toFile())
            .start()
            .waitFor();
    if (code != 0) {
      throw new IOException("openssl failed, see " + folder.resolve("openssl.log"));
    }
  }
}
