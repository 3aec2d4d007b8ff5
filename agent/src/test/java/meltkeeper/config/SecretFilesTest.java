package meltkeeper.config;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A file with a secret is used only while its owner and group alone may. */
class SecretFilesTest {

  @TempDir private Path folder;

  private String words(String place, String permissions) throws IOException {
    Path file = Shop.secret(folder.resolve("secret"), "plover");
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString(permissions));
    return Shop.words(place.replace("FILE", file.toString()) + "\nprinters: {}\n");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          brokers.shop.password-file     | brokers: { shop: { url: "tcp://localhost", username: k, password-file: FILE } }
          metrics.otlp.token-file        | metrics: { otlp: { url: "http://localhost", token-file: FILE } }
          alerts.routes.a.token-file     | alerts: { routes: { a: { webhook: "http://localhost", token-file: FILE } } }
          alerts.routes.a.token-file     | alerts: { routes: { a: { alertmanager: "http://localhost", token-file: FILE } } }
          alerts.routes.a.password-file  | alerts: { routes: { a: { mail: "localhost:25", from: a@shop.example, to: b@shop.example, username: k, password-file: FILE } } }
          http.token-file                | http: { token-file: FILE }
          http.key-file                  | http: { key-file: FILE, certificate-file: FILE }
          """)
  void secretThatEverybodyMayUse_isRefused_withoutShowingIt(String key, String place)
      throws IOException {
    for (String open : new String[] {"rw-r--r--", "rw----r--", "rw-----w-"}) {
      assertThat(words(place, open))
          .contains(key + ": found \"" + folder.resolve("secret") + " with permissions " + open)
          .contains("; chmod 600 " + folder.resolve("secret"))
          .doesNotContain("plover");
    }
    assertThat(words(place, "rw-r-----")).doesNotContain("with permissions", "plover");
    assertThat(words(place, "rw-------")).doesNotContain("with permissions", "plover");
  }
}
