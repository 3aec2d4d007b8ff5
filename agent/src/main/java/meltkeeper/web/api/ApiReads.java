package meltkeeper.web.api;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import meltkeeper.desk.AlertLine;
import meltkeeper.desk.PartFilter;
import meltkeeper.desk.PartLine;
import meltkeeper.desk.RefusedException;
import meltkeeper.outlook.LifeQuestion;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.HotEnd;
import meltkeeper.web.view.AgentView;

/** What can be asked. */
final class ApiReads {

  private static final int MOST_ALERTS = 1_000;

  private final AgentView agent;

  ApiReads(AgentView agent) {
    this.agent = agent;
  }

  void serve(RoutesConfig routes) {
    routes.get("/api/v1/printers", this::printers);
    routes.get("/api/v1/printers/{printer}", this::printer);
    routes.get("/api/v1/printers/{printer}/minutes", this::minutes);
    routes.get("/api/v1/parts", this::parts);
    routes.get("/api/v1/parts/{part}", this::part);
    routes.get("/api/v1/life", this::life);
    routes.get("/api/v1/report", this::report);
    routes.get("/api/v1/alerts", this::alerts);
    routes.get("/api/v1/questions", this::questions);
  }

  private void printers(Context request) {
    List<PrinterView> all = PrinterView.of(agent.live());
    Answering.answer(
        request, Map.of("printers", Paging.of(request).page(request, all, PrinterView::name)));
  }

  private void printer(Context request) {
    String name = request.pathParam("printer");
    Answering.answer(
        request,
        PrinterView.of(agent.live()).stream()
            .filter(printer -> printer.name().equals(name))
            .findFirst()
            .orElseThrow(() -> new UnknownException(unheard(name))));
  }

  private List<Fault> unheard(String name) {
    List<Fault> faults = agent.shop().checkPrinter(name);
    return faults.isEmpty()
        ? List.of(
            Fault.of("printer", name, "a printer that was heard", "nothing was heard of it yet"))
        : faults;
  }

  private void minutes(Context request) {
    String name = request.pathParam("printer");
    List<Fault> faults = agent.shop().checkPrinter(name);
    if (!faults.isEmpty()) {
      throw new UnknownException(faults);
    }
    String index = Optional.ofNullable(request.queryParam("hot_end")).orElse("0");
    if (!index.matches("[0-9]{1,2}") || Integer.parseInt(index) > HotEnd.MAX_INDEX) {
      throw new RefusedException(List.of(Fault.of("hot_end", index, "0 to " + HotEnd.MAX_INDEX)));
    }
    Answering.answer(
        request,
        Map.of(
            "minutes",
            agent.trail(new HotEnd(name, Integer.parseInt(index))).stream()
                .map(MinuteView::of)
                .toList()));
  }

  private void parts(Context request) {
    PartFilter filter =
        new PartFilter(
            Optional.ofNullable(request.queryParam("kind")),
            Optional.ofNullable(request.queryParam("printer")),
            "true".equals(request.queryParam("all")));
    List<PartLine> parts = agent.parts(filter);
    Answering.answer(
        request, Map.of("parts", Paging.of(request).page(request, parts, PartLine::id)));
  }

  private void part(Context request) {
    try {
      Answering.answer(request, agent.desk().parts().part(request.pathParam("part")));
    } catch (RefusedException e) {
      throw new UnknownException(e.faults());
    }
  }

  private void life(Context request) {
    LifeQuestion question = LifeQuestion.ofKind(Optional.ofNullable(request.queryParam("kind")));
    Answering.answer(request, agent.outlook().life(question, agent.nowNanos()));
  }

  private void report(Context request) {
    String since = Optional.ofNullable(request.queryParam("since")).orElse("30d");
    Answering.answer(
        request,
        agent.desk().reports().report(agent.when().since("since", since), agent.nowNanos()));
  }

  private void alerts(Context request) {
    List<AlertLine> alerts = agent.desk().alerts().latest(MOST_ALERTS);
    Answering.answer(
        request, Map.of("alerts", Paging.of(request).page(request, alerts, AlertLine::id)));
  }

  private void questions(Context request) {
    Answering.answer(request, Map.of("questions", agent.desk().questions().open(agent.nowNanos())));
  }
}
