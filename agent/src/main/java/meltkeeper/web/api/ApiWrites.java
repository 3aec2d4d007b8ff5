package meltkeeper.web.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import meltkeeper.desk.AnswerJson;
import meltkeeper.desk.PartChange;
import meltkeeper.desk.RefusedException;
import meltkeeper.desk.ToldAct;
import meltkeeper.desk.ToldAct.Verb;
import meltkeeper.protocol.Fault;
import meltkeeper.web.view.AgentView;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** What can be done. Each write may bear an {@code Idempotency-Key}. */
final class ApiWrites {

  private static final Logger LOG = LoggerFactory.getLogger(ApiWrites.class);
  private static final List<Verb> OF_A_PART =
      List.of(Verb.FIT, Verb.REMOVE, Verb.CLEAN, Verb.RETIRE, Verb.BLAME, Verb.UNDO);

  private final AgentView agent;
  private final Repeats repeats = new Repeats();

  ApiWrites(AgentView agent) {
    this.agent = agent;
  }

  void serve(RoutesConfig routes) {
    routes.post("/api/v1/parts", request -> act(request, Verb.ADD, Optional.empty()));
    routes.post("/api/v1/swaps", request -> act(request, Verb.SWAP, Optional.empty()));
    for (Verb verb : OF_A_PART) {
      routes.post(
          "/api/v1/parts/{part}/" + verb.word(),
          request -> act(request, verb, Optional.of(request.pathParam("part"))));
    }
    routes.post("/api/v1/paper", this::paper);
    routes.post("/api/v1/alerts/{alert}/acknowledge", this::acknowledge);
    routes.post("/api/v1/questions/{episode}/nothing", this::nothing);
  }

  private void act(Context request, Verb verb, Optional<String> part) {
    write(
        request,
        () -> {
          JsonNode json = ToldAct.object(request.body());
          part.ifPresent(id -> name(json, id));
          ToldAct told = ToldAct.read(verb.word(), json);
          PartChange change = told.done(agent.desk(), agent.when());
          LOG.info("api: {}{}", change.done(), told.by().isEmpty() ? "" : ", told by " + told.by());
          return AnswerJson.print(change);
        });
  }

  private static void name(JsonNode json, String part) {
    if (json instanceof ObjectNode object) {
      if (object.has("part") && !object.path("part").asText().equals(part)) {
        throw new RefusedException(
            List.of(
                Fault.of(
                    "part",
                    object.path("part").asText(),
                    "none, or " + part + " as the address says")));
      }
      object.put("part", part);
    }
  }

  private void paper(Context request) {
    String name = Optional.ofNullable(request.queryParam("name")).orElse("the body");
    write(
        request,
        () -> AnswerJson.print(agent.desk().paper().take(name, request.body(), agent.nowNanos())));
  }

  private void acknowledge(Context request) {
    write(
        request,
        () ->
            AnswerJson.print(
                agent
                    .desk()
                    .alerts()
                    .acknowledge(request.pathParam("alert"), by(request), agent.nowNanos())));
  }

  private void nothing(Context request) {
    write(
        request,
        () -> {
          agent.desk().questions().nothing(request.pathParam("episode"));
          return AnswerJson.print(new Noted("noted that nothing was done"));
        });
  }

  /** That something was noted. */
  record Noted(String done) {}

  private static String by(Context request) {
    String body = request.body();
    String by = body.isBlank() ? "" : ToldAct.object(body).path("by").asText("");
    return by.isBlank() ? "the API" : by;
  }

  private void write(Context request, Supplier<String> write) {
    String answer =
        repeats.once(
            Optional.ofNullable(request.header("Idempotency-Key")),
            request.path() + "?" + request.queryString() + "\n" + request.body(),
            write);
    request.contentType("application/json").result(answer);
  }
}
