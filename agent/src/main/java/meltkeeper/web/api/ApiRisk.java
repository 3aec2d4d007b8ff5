package meltkeeper.web.api;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import meltkeeper.desk.RefusedException;
import meltkeeper.desk.ToldAct;
import meltkeeper.outlook.Batch;
import meltkeeper.outlook.RiskQuestion;
import meltkeeper.outlook.Stretch;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.HotEnd;
import meltkeeper.web.view.AgentView;

/** Whether a batch gets through. A question, though it is posted. */
final class ApiRisk {

  private final AgentView agent;

  ApiRisk(AgentView agent) {
    this.agent = agent;
  }

  void serve(RoutesConfig routes) {
    routes.post("/api/v1/risk", this::stretches);
    routes.post("/api/v1/risk/{printer}/gcode", this::gcode);
  }

  private void stretches(Context request) {
    JsonNode json = ToldAct.object(request.body());
    String printer = json.path("printer").asText("");
    JsonNode told = json.path("stretches");
    List<Fault> faults = new ArrayList<>(agent.shop().checkPrinter(printer));
    if (!told.isArray() || told.isEmpty()) {
      faults.add(
          Fault.of(
              "stretches", told.toString(), "a list such as [{\"hours\":14,\"temperature\":225}]"));
    }
    RefusedException.when(faults);
    Optional<Batch> batch = Optional.empty();
    for (JsonNode one : told) {
      Stretch stretch =
          new Stretch(
              one.path("hours").asDouble(Double.NaN), one.path("temperature").asDouble(Double.NaN));
      int index = one.path("hot_end").asInt(0);
      faults.addAll(agent.shop().checkHotEnd(printer, index));
      faults.addAll(stretch.faults());
      RefusedException.when(faults);
      Batch more = stretch.on(index, agent.hotAboveCelsius(new HotEnd(printer, index)));
      batch = Optional.of(batch.map(before -> before.then(more)).orElse(more));
    }
    answer(
        request,
        printer,
        batch.orElseThrow(),
        json.has("at_most")
            ? Optional.of(json.path("at_most").asDouble(Double.NaN))
            : Optional.empty());
  }

  private void gcode(Context request) throws IOException {
    String printer = request.pathParam("printer");
    RefusedException.when(agent.shop().checkPrinter(printer));
    String name = Optional.ofNullable(request.queryParam("name")).orElse("the body");
    Optional<String> atMost = Optional.ofNullable(request.queryParam("at_most"));
    if (atMost.filter(share -> !share.matches("0?\\.[0-9]{1,6}")).isPresent()) {
      throw new RefusedException(
          List.of(Fault.of("at_most", atMost.get(), "a share above 0 and below 1, such as 0.05")));
    }
    Batch batch = agent.gcode(printer, name).read(new LimitedStream(request.bodyInputStream()));
    answer(request, printer, batch, atMost.map(Double::valueOf));
  }

  private void answer(Context request, String printer, Batch batch, Optional<Double> atMost) {
    Answering.answer(
        request, agent.outlook().risk(new RiskQuestion(printer, batch, atMost), agent.nowNanos()));
  }
}
