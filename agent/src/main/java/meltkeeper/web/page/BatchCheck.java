package meltkeeper.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import meltkeeper.desk.RefusedException;
import meltkeeper.outlook.Batch;
import meltkeeper.outlook.RiskAnswer;
import meltkeeper.outlook.RiskQuestion;
import meltkeeper.outlook.Stretch;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.HotEnd;
import meltkeeper.web.view.AgentView;

/** Whether the next batch gets through: by hours and temperature, or by a G-code file. */
final class BatchCheck {

  private final AgentView agent;
  private final Pages pages;

  BatchCheck(AgentView agent, Pages pages) {
    this.agent = agent;
    this.pages = pages;
  }

  void serve(RoutesConfig routes) {
    routes.get(
        "/batch",
        request ->
            pages.show(
                request,
                "batch",
                BatchPage.unasked(
                    agent, Optional.ofNullable(request.queryParam("printer")).orElse(""))));
    routes.post("/batch", this::check);
  }

  private void check(Context request) throws IOException {
    String printer = field(request, "printer");
    RefusedException.when(agent.shop().checkPrinter(printer));
    Optional<UploadedFile> file =
        Optional.ofNullable(request.uploadedFile("gcode")).filter(f -> f.size() > 0);
    Batch batch = file.isPresent() ? ofFile(printer, file.get()) : ofHours(printer, request);
    String atMost = field(request, "at_most");
    RiskAnswer answer =
        agent
            .outlook()
            .risk(
                new RiskQuestion(
                    printer,
                    batch,
                    atMost.isBlank() ? Optional.empty() : Optional.of(share(atMost))),
                agent.nowNanos());
    pages.show(
        request,
        "batch",
        new BatchPage(
            agent.shop().printers(),
            printer,
            field(request, "hours"),
            field(request, "temperature"),
            atMost,
            Optional.of(answer)));
  }

  private Batch ofFile(String printer, UploadedFile file) throws IOException {
    try (InputStream in = file.content()) {
      return agent.gcode(printer, file.filename()).read(in);
    }
  }

  private Batch ofHours(String printer, Context request) {
    Stretch stretch = new Stretch(number(request, "hours"), number(request, "temperature"));
    List<Fault> faults = new ArrayList<>(stretch.faults());
    RefusedException.when(faults);
    return stretch.on(0, agent.hotAboveCelsius(HotEnd.first(printer)));
  }

  private static double share(String percent) {
    return parsed("at_most", percent) / 100;
  }

  private static double number(Context request, String name) {
    return parsed(name, field(request, name));
  }

  private static double parsed(String name, String told) {
    String text = told.strip().replace(',', '.').replaceFirst("\\s*%$", "");
    if (!text.matches("[0-9]{1,6}(\\.[0-9]{1,6})?")) {
      throw new RefusedException(
          List.of(Fault.of(name, told, "a number, such as 14 or 7.5", "or choose a G-code file")));
    }
    return Double.parseDouble(text);
  }

  private static String field(Context request, String name) {
    return Optional.ofNullable(request.formParam(name)).orElse("");
  }
}
