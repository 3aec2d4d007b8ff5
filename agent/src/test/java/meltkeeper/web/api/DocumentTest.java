package meltkeeper.web.api;

import static meltkeeper.desk.Bench.HERON;
import static meltkeeper.desk.Bench.NOW;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaValidatorsConfig;
import com.networknt.schema.SpecVersion;
import io.javalin.Javalin;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.TreeSet;
import meltkeeper.desk.Bench;
import meltkeeper.part.Because;
import meltkeeper.store.Alert;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Episode;
import meltkeeper.store.Posting;
import meltkeeper.store.Subject;
import meltkeeper.web.ServedShop;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The OpenAPI document is true: of every route, and of every answer. */
final class DocumentTest {

  private static final ObjectMapper MAPPER = new ObjectMapper();

  private final ServedShop shop = new ServedShop();
  private String text = "";

  @BeforeEach
  void fetch() {
    text = shop.get("/api/v1/openapi.json").body();
  }

  @AfterEach
  void close() {
    shop.close();
  }

  @Test
  void document_isValidOpenApi31() {
    // The OpenAPI Initiative's JSON Schema of 3.1, edition 2021-04-15, as it is published.
    var schema =
        JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
            .getSchema(
                Objects.requireNonNull(
                    DocumentTest.class.getResourceAsStream("openapi-3.1-schema.json")));

    assertThat(schema.validate(text, InputFormat.JSON)).isEmpty();
  }

  @Test
  void everyRoute_isInIt_andNothingElse() throws IOException {
    TreeSet<String> told = new TreeSet<>();
    MAPPER
        .readTree(text)
        .path("paths")
        .properties()
        .forEach(
            path ->
                path.getValue()
                    .fieldNames()
                    .forEachRemaining(
                        method -> told.add(method.toUpperCase(Locale.ROOT) + " " + path.getKey())));
    TreeSet<String> served = new TreeSet<>();
    var unused =
        Javalin.create(
            config -> {
              config.startup.showJavalinBanner = false;
              config.events.handlerAdded(
                  handler -> served.add(handler.getHttpMethod() + " " + handler.getPath()));
              new Api(shop).serve(config.routes);
            });

    assertThat(served).isEqualTo(told);
  }

  @Test
  void everyAnswer_isAsItSays() throws IOException {
    String old = shop.bench.add("liner");
    shop.bench.hot(HERON, "2026-03-10T00:00:00Z", 10, 225);
    shop.bench.fit(old, HERON, "2026-03-09T00:00:00Z");
    shop.bench.remove(old, Because.JAM, "2026-03-10T04:00:00Z");
    shop.hear(HERON, "plant-labels-3", "PLA", ServedShop.NARROWING);
    shop.hear(Bench.IBIS, "", "", ServedShop.CLEAR);
    Episode episode =
        new Episode(AlertTopic.JAM_STALLED, new Subject.OfHotEnd(HERON), NOW - 11 * Bench.HOUR);
    Alert alert = new Alert(episode, Alert.Phase.BEGAN, 0, NOW - 11 * Bench.HOUR, "stalled");
    shop.bench.store.outbox().post(List.of(new Posting(alert, List.of("phone"))));

    answers("Printers", shop.get("/api/v1/printers"));
    answers("Printer", shop.get("/api/v1/printers/heron"));
    answers("Minutes", shop.get("/api/v1/printers/heron/minutes"));
    answers("Change", shop.post("/api/v1/parts", "{\"kind\":\"nozzle\",\"variant\":\"brass\"}"));
    answers(
        "Change",
        shop.post(
            "/api/v1/swaps",
            "{\"printer\":\"heron\",\"kind\":\"liner\",\"because\":\"worn\",\"at\":\"08:02\"}"));
    answers("Parts", shop.get("/api/v1/parts?all=true"));
    answers("Part", shop.get("/api/v1/parts/" + old));
    answers("Life", shop.get("/api/v1/life"));
    answers(
        "Risk",
        shop.post(
            "/api/v1/risk",
            "{\"printer\":\"heron\",\"at_most\":0.05,"
                + "\"stretches\":[{\"hours\":14,\"temperature\":225}]}"));
    answers("Report", shop.get("/api/v1/report"));
    answers("Alerts", shop.get("/api/v1/alerts"));
    answers("Alert", shop.post("/api/v1/alerts/" + alert.id() + "/acknowledge", "{}"));
    answers("Questions", shop.get("/api/v1/questions"));
    answers("Noted", shop.post("/api/v1/questions/" + episode.id() + "/nothing", "{}"));
    answers(
        "Paper",
        shop.send(
            shop.request("/api/v1/paper", "Content-Type", "text/csv")
                .POST(
                    BodyPublishers.ofString(
                        "id,kind,ended,temperature,hours\nL-90,liner,jam,215,300\n"))
                .build()));
    answers("Problem", shop.get("/api/v1/parts/none"));
    answers("Problem", shop.post("/api/v1/risk", "{}"));
    answers("Problem", shop.get("/api/v1/none"));
  }

  private void answers(String name, HttpResponse<String> answer) throws IOException {
    assertThat(answer.statusCode() < 300).as(answer.body()).isEqualTo(!name.equals("Problem"));
    JsonNode document = MAPPER.readTree(text);
    var schema =
        JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
            .getSchema(
                ((ObjectNode) document.deepCopy()).put("$ref", "#/components/schemas/" + name),
                SchemaValidatorsConfig.builder().formatAssertionsEnabled(true).build());
    assertThat(schema.validate(answer.body(), InputFormat.JSON))
        .as("%s: %s", name, answer.body())
        .isEmpty();
  }
}
