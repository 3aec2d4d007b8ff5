package meltkeeper.web.page;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import meltkeeper.web.api.Problem;
import meltkeeper.web.guard.Guard;
import meltkeeper.web.view.AgentView;

/** Serves every view of the page. */
public final class Pages implements AutoCloseable {

  private final AgentView agent;
  private final Guard guard;
  private final Texts texts = Texts.ENGLISH;
  private final DoneBook done = new DoneBook();
  private final LiveFeed live;
  private final TemplateEngine templates = TemplateEngine.createPrecompiled(ContentType.Html);

  public Pages(AgentView agent, Guard guard) {
    this.agent = agent;
    this.guard = guard;
    this.live = new LiveFeed(agent);
    templates.setTrimControlStructures(true);
  }

  /** Serves all of it. */
  public void serve(RoutesConfig routes) {
    Assets.serve(routes);
    live.serve(routes);
    new TapActs(agent, this, done).serve(routes);
    new BatchCheck(agent, this).serve(routes);
    routes.get("/", this::overview);
    routes.get("/printers/{printer}", this::printer);
    routes.get("/parts", this::parts);
    routes.get("/parts/{part}", this::part);
    routes.get("/kinds", request -> show(request, "kinds", KindsPage.of(agent)));
    routes.get("/alerts", request -> show(request, "alerts", AlertsPage.of(agent)));
    routes.get("/labels", this::labels);
    routes.get(Guard.ENTRANCE, this::entrance);
    routes.post(Guard.ENTRANCE, this::enter);
  }

  /** True for a request of a browser that shows what it gets to a person. */
  public boolean isPage(Context request) {
    String path = request.path();
    return !path.startsWith("/api/")
        && !path.equals("/metrics")
        && !path.equals("/healthz")
        && Optional.ofNullable(request.header("Accept")).orElse("").contains("text/html");
  }

  /** Says what did not work. */
  public void tell(Context request, Problem problem) {
    if (problem.status() == 401) {
      request.redirect(Addresses.with(Guard.ENTRANCE, "to", here(request)));
      return;
    }
    String back =
        Optional.ofNullable(request.formParamMap().get("back"))
            .flatMap(values -> values.stream().findFirst())
            .map(Addresses::back)
            .orElse("/");
    request.status(problem.status());
    show(
        request,
        "trouble",
        new TroublePage(problem.status(), List.of(problem.detail().split("\n")), back));
  }

  /** Shows a view. */
  void show(Context request, String template, Object view) {
    StringOutput html = new StringOutput();
    templates.render(
        template + ".jte", Map.of("page", view, "frame", frame(request, template)), html);
    request.html(html.toString());
  }

  /** What surrounds a view. */
  Frame frame(Context request, String place) {
    List<String> warnings = new ArrayList<>();
    agent.live().trouble().ifPresent(why -> warnings.add(texts.say("warning.store", why)));
    agent
        .routeTroubles()
        .forEach(
            (route, why) -> {
              if (!why.isEmpty()) {
                warnings.add(texts.say("warning.route", route, why));
              }
            });
    agent
        .sources()
        .forEach(
            (source, up) -> {
              if (!up) {
                warnings.add(texts.say("warning.source", source));
              }
            });
    agent
        .live()
        .unknownPrinters()
        .forEach(unknown -> warnings.add(texts.say("warning.unknown", unknown)));
    return new Frame(
        texts,
        new Times(texts, agent.shop().zone(), agent.nowNanos()),
        place,
        here(request),
        Optional.ofNullable(request.queryParam("done")).flatMap(done::find).map(Pages::news),
        warnings,
        guard.mayWrite(request),
        guard.hasToken());
  }

  private static Frame.News news(DoneBook.Done done) {
    return new Frame.News(done.undo().map(undo -> done.id()), done.words(), done.notes());
  }

  private static String here(Context request) {
    String query = Optional.ofNullable(request.queryString()).map(q -> "?" + q).orElse("");
    return Addresses.without(request.path() + query, "done");
  }

  private void overview(Context request) {
    show(
        request,
        "overview",
        OverviewPage.of(agent, frame(request, "overview"), word(request, "find"), number(request)));
  }

  private void printer(Context request) {
    String name = request.pathParam("printer");
    Optional<PrinterPage> page = PrinterPage.of(agent, frame(request, "printer"), name);
    if (page.isPresent()) {
      show(request, "printer", page.get());
    } else {
      tell(
          request,
          Problem.of(
              404,
              agent.shop().checkPrinter(name).stream()
                  .findFirst()
                  .map(Object::toString)
                  .orElse(name)));
    }
  }

  private void parts(Context request) {
    show(
        request,
        "parts",
        PartsPage.of(
            agent, word(request, "find"), word(request, "all").equals("true"), number(request)));
  }

  private void part(Context request) {
    show(request, "part", PartPage.of(agent, frame(request, "part"), request.pathParam("part")));
  }

  private void labels(Context request) {
    show(
        request,
        "labels",
        LabelsPage.of(
            agent, request.scheme() + "://" + request.host(), request.queryParams("part")));
  }

  private void entrance(Context request) {
    show(request, "enter", new EnterPage(Addresses.back(word(request, "to")), false));
  }

  private void enter(Context request) {
    String to = Addresses.back(Optional.ofNullable(request.formParam("to")).orElse("/"));
    if (guard.enter(request, Optional.ofNullable(request.formParam("token")).orElse(""))) {
      request.redirect(to, io.javalin.http.HttpStatus.SEE_OTHER);
    } else {
      request.status(401);
      show(request, "enter", new EnterPage(to, true));
    }
  }

  private static String word(Context request, String name) {
    return Optional.ofNullable(request.queryParam(name)).orElse("");
  }

  private static int number(Context request) {
    String told = word(request, "stretch");
    return told.matches("[0-9]{1,6}") ? Integer.parseInt(told) : 1;
  }

  @Override
  public void close() {
    live.close();
  }
}
