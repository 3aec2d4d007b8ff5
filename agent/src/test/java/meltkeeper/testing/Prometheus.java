package meltkeeper.testing;

import static org.awaitility.Awaitility.await;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** A real Prometheus on a port of the loopback interface. */
public final class Prometheus implements AutoCloseable {

  private static final ObjectMapper JSON = new ObjectMapper();

  private final RunningProgram program;
  private final LocalHttp http;

  private Prometheus(RunningProgram program, LocalHttp http) {
    this.program = program;
    this.http = http;
  }

  /**
   * Starts it and waits until it answers.
   *
   * @param folder for its data and log
   * @param configuration its file
   * @param consoles the folder of its pages
   */
  public static Prometheus start(Path folder, Path configuration, Path consoles)
      throws IOException {
    int port = RealParts.freePort();
    RunningProgram program =
        RunningProgram.start(
            folder.resolve("prometheus.log"),
            List.of(
                RealParts.find("prometheus").toString(),
                "--config.file=" + configuration,
                "--storage.tsdb.path=" + folder.resolve("prometheus-data"),
                "--web.listen-address=127.0.0.1:" + port,
                "--web.console.templates=" + consoles,
                "--web.console.libraries=" + consoles));
    Prometheus prometheus = new Prometheus(program, new LocalHttp(port));
    await("prometheus answers")
        .atMost(Duration.ofSeconds(60))
        .until(() -> prometheus.http.answers("/-/ready"));
    return prometheus;
  }

  /** The series that a query finds now, each with its labels and value. */
  public List<JsonNode> query(String query) throws IOException {
    JsonNode answer =
        JSON.readTree(
            http.get("/api/v1/query?query=" + URLEncoder.encode(query, StandardCharsets.UTF_8)));
    List<JsonNode> found = new ArrayList<>();
    answer.at("/data/result").forEach(found::add);
    return found;
  }

  /** The value of the one series that a query finds; empty when it finds none. */
  public OptionalDouble value(String query) throws IOException {
    List<JsonNode> found = query(query);
    if (found.size() > 1) {
      throw new AssertionError(query + " finds " + found.size() + " series");
    }
    return found.stream().mapToDouble(series -> series.at("/value/1").asDouble()).findFirst();
  }

  /** The text at that path. */
  public String get(String path) throws IOException {
    return http.get(path);
  }

  @Override
  public void close() {
    program.close();
  }
}
