package meltkeeper.alert.route;

import static meltkeeper.alert.Calls.message;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import meltkeeper.alert.Calls;
import meltkeeper.store.Alert;
import meltkeeper.store.AlertTopic;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Routes to a web server, against one that is real. */
final class HttpRoutesTest {

  private static final Duration TIMEOUT = Duration.ofSeconds(2);
  private static final ObjectMapper JSON = new ObjectMapper();

  private record Request(String path, String token, String header, String body) {}

  @TempDir private Path folder;
  private final List<Request> requests = new CopyOnWriteArrayList<>();
  private volatile int answer = 200;
  private HttpServer server = served();

  private HttpServer served() {
    try {
      HttpServer made =
          HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
      made.createContext(
          "/",
          exchange -> {
            requests.add(
                new Request(
                    exchange.getRequestURI().toString(),
                    String.valueOf(exchange.getRequestHeaders().getFirst("Authorization")),
                    String.valueOf(exchange.getRequestHeaders().getFirst("X-Shop")),
                    new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8)));
            exchange.sendResponseHeaders(answer, -1);
            exchange.close();
          });
      return made;
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  @BeforeEach
  void serve() {
    server.start();
  }

  @AfterEach
  void stop() {
    server.stop(0);
  }

  private URI url(String path) {
    return URI.create("http://127.0.0.1:" + server.getAddress().getPort() + path);
  }

  private Route webhook(Optional<BodyTemplate> body, Optional<Path> token) {
    return new WebhookRoute(
        new RouteSettings.Webhook(
            url("/hook"), body, Map.of("X-Shop", "plant labels"), token, Optional.empty()),
        TIMEOUT);
  }

  @Test
  void webhook_postsTheAlertAsJson_withHeadersAndToken() throws Exception {
    Path token = Files.writeString(folder.resolve("token"), "a-token\n");
    webhook(Optional.empty(), Optional.of(token)).deliver(message(AlertTopic.TOO_HOT));

    Request request = requests.get(0);
    assertThat(request.path()).isEqualTo("/hook");
    assertThat(request.token()).isEqualTo("Bearer a-token");
    assertThat(request.header()).isEqualTo("plant labels");
    JsonNode json = JSON.readTree(request.body());
    assertThat(json.get("id").asText()).matches("[0-9a-f]{12}");
    assertThat(json.get("topic").asText()).isEqualTo("too-hot");
    assertThat(json.get("phase").asText()).isEqualTo("began");
    assertThat(json.get("printer").asText()).isEqualTo("heron");
    assertThat(json.get("hot_end").asInt()).isZero();
    assertThat(json.get("began").asText()).isEqualTo("2026-03-02T08:00:00Z");
    assertThat(json.get("title").asText()).isEqualTo("heron: too hot");
    assertThat(json.get("text").asText()).isEqualTo("heron needs \"you\".");
    assertThat(json.get("cautions").get(0).asText()).contains("deadly to birds");
    assertThat(json.get("pressing").asBoolean()).isTrue();
    assertThat(json.get("sample").asBoolean()).isFalse();
    assertThat(json.fieldNames()).toIterable().allMatch(BodyTemplate.FIELDS::contains);
  }

  @Test
  void template_filled_staysJsonWhateverTheAlertSays() throws Exception {
    BodyTemplate body =
        new BodyTemplate("{\"say\": \"${title}: ${text} ${cautions}\", \"part\": \"${part}\"}");
    webhook(Optional.of(body), Optional.empty()).deliver(message(AlertTopic.JAM_STALLED));

    JsonNode json = JSON.readTree(requests.get(0).body());
    assertThat(json.get("say").asText())
        .startsWith("heron: jammed: heron needs \"you\". Hot metal burns");
    assertThat(json.get("part").asText()).isEmpty();
  }

  @Test
  void templateWithAnUnknownField_isAFault() {
    assertThat(BodyTemplate.fault("${texts}").map(Object::toString))
        .hasValueSatisfying(fault -> assertThat(fault).contains("${texts}", "title, text"));
    assertThat(BodyTemplate.fault("${text} $text {text}")).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "500,false",
    "503,false",
    "429,false",
    "401,false",
    "404,false",
    "302,false",
    "400,true",
    "413,true"
  })
  void refusal_isFinalOnlyWhereTheMessageIsToBlame(int status, boolean isFinal) {
    answer = status;
    UndeliveredException failure =
        catchThrowableOfType(
            UndeliveredException.class,
            () -> webhook(Optional.empty(), Optional.empty()).deliver(message(AlertTopic.TOO_HOT)));

    assertThat(failure).hasMessage("it answered " + status);
    assertThat(failure.isFinal()).isEqualTo(isFinal);
  }

  @Test
  void receiverThatAcceptsAndNeverAnswers_failsInBoundedTime() throws Exception {
    try (ServerSocket mute = new ServerSocket(0, 5, InetAddress.getLoopbackAddress())) {
      Route route =
          new WebhookRoute(
              new RouteSettings.Webhook(
                  URI.create("http://127.0.0.1:" + mute.getLocalPort() + "/"),
                  Optional.empty(),
                  Map.of(),
                  Optional.empty(),
                  Optional.empty()),
              Duration.ofMillis(300));
      UndeliveredException failure =
          catchThrowableOfType(
              UndeliveredException.class, () -> route.deliver(message(AlertTopic.TOO_HOT)));

      assertThat(failure.isFinal()).isFalse();
    }
  }

  @Test
  void tokenFileThatIsGone_isNamed() {
    UndeliveredException failure =
        catchThrowableOfType(
            UndeliveredException.class,
            () ->
                webhook(Optional.empty(), Optional.of(folder.resolve("gone")))
                    .deliver(message(AlertTopic.TOO_HOT)));

    assertThat(failure).hasMessageContaining("gone cannot be read");
    assertThat(failure.isFinal()).isFalse();
  }

  @Test
  void alertmanager_isToldOfBeginningAndEndUnderTheSameLabels() throws Exception {
    Route route =
        new AlertmanagerRoute(
            new RouteSettings.Alertmanager(url("/am"), Optional.empty(), Optional.empty()),
            TIMEOUT,
            Duration.ofHours(28));
    route.deliver(message(AlertTopic.JAM_NARROWING));
    route.deliver(new Message(Calls.alert(AlertTopic.JAM_NARROWING, Alert.Phase.ALL_CLEAR), false));

    assertThat(requests).extracting(Request::path).containsOnly("/am/api/v2/alerts");
    JsonNode began = JSON.readTree(requests.get(0).body()).get(0);
    JsonNode over = JSON.readTree(requests.get(1).body()).get(0);
    assertThat(over.get("labels")).isEqualTo(began.get("labels"));
    assertThat(began.get("labels").toString())
        .isEqualTo(
            "{\"alertname\":\"meltkeeper\",\"topic\":\"jam-narrowing\",\"severity\":\"critical\","
                + "\"printer\":\"heron\",\"hot_end\":\"0\"}");
    assertThat(began.get("startsAt").asText()).isEqualTo("2026-03-02T08:00:00Z");
    assertThat(began.get("endsAt").asText()).isEqualTo("2026-03-03T12:00:00Z");
    assertThat(over.get("endsAt").asText()).isEqualTo("2026-03-02T08:00:00Z");
  }
}
