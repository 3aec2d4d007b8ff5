package meltkeeper.source.mqtt;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import meltkeeper.testing.RealParts;

/** A certificate authority of our own, and a broker's certificate by it, made by openssl. */
record Certificates(Path folder) {

  Path authority() {
    return folder.resolve("ca.crt");
  }

  /**
   * Makes them anew.
   *
   * @param name what the certificate is for, as openssl writes it: {@code IP:127.0.0.1}
   */
  Certificates issue(String name) throws IOException, InterruptedException {
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
        "broker.key",
        "-out",
        "broker.csr",
        "-subj",
        "/CN=broker");
    Files.writeString(folder.resolve("names"), "subjectAltName=" + name + "\n");
    openssl(
        "x509",
        "-req",
        "-in",
        "broker.csr",
        "-CA",
        "ca.crt",
        "-CAkey",
        "ca.key",
        "-CAcreateserial",
        "-out",
        "broker.crt",
        "-days",
        "2",
        "-extfile",
        "names");
    return this;
  }

  /** Lines of the broker's configuration that make its listener use them. */
  String[] settings() {
    return new String[] {
      "certfile " + folder.resolve("broker.crt"), "keyfile " + folder.resolve("broker.key")
    };
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
