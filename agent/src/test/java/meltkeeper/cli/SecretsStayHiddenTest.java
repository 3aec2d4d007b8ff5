package meltkeeper.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import meltkeeper.testing.RealParts;
import meltkeeper.testing.RunningProgram;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A whole agent with a secret of every kind, each in use and refused: none is ever shown. */
class SecretsStayHiddenTest {

  private static final List<String> SECRETS =
      List.of("plover-broker", "plover-hook", "plover-mail", "plover-push");

  @TempDir private Path shop;
  private final HttpClient client = HttpClient.newHttpClient();

  private void secret(String name, String text) throws IOException {
    Path file = Files.writeString(shop.resolve(name), text);
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
  }

  private void configure(int page, int nobody) throws IOException {
    secret("broker", "plover-broker");
    secret("hook", "plover-hook");
    secret("mail", "plover-mail");
    secret("push", "plover-push");
    Files.writeString(
        shop.resolve("meltkeeper.yaml"),
        """
        store: jdbc:sqlite:shop.db
        http: { listen: "127.0.0.1:PAGE" }
        brokers:
          shop: { url: "tcp://127.0.0.1:NOBODY", username: keeper, password-file: broker }
        mappings: { now: [ { topic: "plant/{printer}/now", payload: number, read: { hot-end-temperature: "" } } ] }
        printers: { heron: { from: { broker: shop, mapping: now } } }
        alerts:
          routes:
            phone: { webhook: "http://127.0.0.1:NOBODY/", token-file: hook }
            office: { mail: "127.0.0.1:NOBODY", encryption: none, from: a@shop.example, to: b@shop.example, username: keeper, password-file: mail }
        metrics: { otlp: { url: "http://127.0.0.1:NOBODY/v1/metrics", every: 1s, token-file: push } }
        """
            .replace("PAGE", String.valueOf(page))
            .replace("NOBODY", String.valueOf(nobody)));
  }

  private RunningProgram agent(Path log) throws IOException {
    return RunningProgram.start(
        log,
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-cp",
            System.getProperty("java.class.path"),
            "meltkeeper.cli.Main",
            "run",
            "--config",
            shop.resolve("meltkeeper.yaml").toString()));
  }

  private String get(int port, String path) {
    try {
      URI uri = URI.create("http://127.0.0.1:" + port + path);
      return client.send(HttpRequest.newBuilder(uri).build(), BodyHandlers.ofString()).body();
    } catch (IOException e) {
      return "";
    } catch (InterruptedException e) {
      throw new AssertionError(e);
    }
  }

  /** Every path that needs no name, as the agent's own document lists them, and the rest. */
  private List<String> paths(int port) throws IOException {
    List<String> paths = new ArrayList<>(List.of("/", "/parts", "/kinds", "/metrics", "/healthz"));
    new ObjectMapper()
        .readTree(get(port, "/api/v1/openapi.json"))
        .path("paths")
        .fieldNames()
        .forEachRemaining(path -> paths.add(path.replaceAll("\\{[^}]+}", "heron")));
    assertThat(paths).hasSizeGreaterThan(10);
    return paths;
  }

  private String typed(String... args) {
    StringWriter all = new StringWriter();
    PrintWriter printed = new PrintWriter(all, true);
    Main.run(printed, printed, args);
    return all.toString();
  }

  @Test
  void agentWithSecretsOfEveryKind_showsNone_inLogPageApiOrCommands() throws Exception {
    int port = RealParts.freePort();
    configure(port, RealParts.freePort());
    String config = shop.resolve("meltkeeper.yaml").toString();
    Path log = shop.resolve("log");
    StringBuilder shown = new StringBuilder();
    try (RunningProgram agent = agent(log)) {
      await()
          .atMost(Duration.ofMinutes(1))
          .untilAsserted(
              () ->
                  assertThat(Files.readString(log))
                      .contains("broker shop")
                      .contains("page on")
                      .contains("metrics cannot be pushed"));
      paths(port).forEach(path -> shown.append(get(port, path)));
      for (String route : List.of("phone", "office")) {
        shown.append(typed("alert", "test", route, "--config", config));
      }
      shown.append(typed("doctor", "--for", "1", "--config", config));
      shown.append(typed("check", "--config", config));
      agent.terminate();
    }
    shown.append(Files.readString(log));
    assertThat(shown).contains("heron", "route phone", "route office", "bad   broker shop");
    SECRETS.forEach(secret -> assertThat(shown).doesNotContain(secret));
  }
}
