package meltkeeper.config;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The configuration that the package installs; its folders are ones of the test. */
class PackagedConfigurationTest {

  @TempDir private Path folder;

  private String installed() throws IOException {
    return Files.readString(Path.of("src/package/meltkeeper.yaml"))
        .replace("/var/lib/meltkeeper/", folder + "/");
  }

  private Settings read(String text) {
    return ConfigReader.read(folder.resolve("meltkeeper.yaml").toString(), text)
        .fold(
            settings -> settings,
            faults -> {
              throw new AssertionError(faults.toString());
            });
  }

  @Test
  void asInstalled_isValid_servesThisComputerAloneAndCallsNobody() throws IOException {
    Settings settings = read(installed());
    assertThat(settings.web().host()).isEqualTo("127.0.0.1");
    assertThat(settings.brokers()).isEmpty();
    assertThat(settings.printers()).isEmpty();
    assertThat(settings.alerts().routes()).isEmpty();
    assertThat(settings.commands()).isEmpty();
  }

  @Test
  void examplesInItsComments_areValidOnceTheirMarkIsTaken() throws IOException {
    Shop.secret(folder.resolve("shop.password"), "seed");
    Settings settings =
        read(installed().replace("printers: {}", "printers:").replaceAll("(?m)^#(?! \\S)", ""));
    assertThat(settings.printers()).containsOnlyKeys("heron", "ibis", "egret");
    assertThat(settings.alerts().routes()).hasSize(1);
    assertThat(settings.costs()).isPresent();
  }
}
