package meltkeeper.web;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import io.javalin.Javalin;
import io.javalin.http.Context;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import meltkeeper.desk.AnswerJson;
import meltkeeper.metrics.Exposition;
import meltkeeper.metrics.Metrics;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Serves the page, the API, the metrics and the health of the agent over HTTP. */
public final class Web implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(Web.class);

  private final Supplier<Overview> overview;
  private final Metrics metrics;
  private final TemplateEngine templates = TemplateEngine.createPrecompiled(ContentType.Html);
  private final Javalin server;

  /**
   * Starts to serve.
   *
   * @param host to bind to, loopback unless the owner says otherwise
   * @param port to bind to; 0 for any free one
   * @param overview asked once a request
   */
  public Web(String host, int port, Supplier<Overview> overview, Metrics metrics) {
    this.overview = overview;
    this.metrics = metrics;
    this.server =
        Javalin.create(
            config -> {
              config.startup.showJavalinBanner = false;
              config.startup.showOldJavalinVersionWarning = false;
              config.routes.get("/", this::page);
              config.routes.get("/healthz", this::health);
              config.routes.get("/metrics", this::metrics);
              config.routes.get("/api/v1/printers", this::printers);
              config.routes.get("/api/v1/parts", this::parts);
              config.routes.before(Web::harden);
              config.routes.error(404, Web::notFound);
              config.routes.exception(Exception.class, Web::failed);
            });
    server.start(host, port);
  }

  /** The port that is served. */
  public int port() {
    return server.port();
  }

  private static void harden(Context request) {
    request.header("X-Content-Type-Options", "nosniff");
    request.header("Referrer-Policy", "no-referrer");
    request.header("X-Frame-Options", "DENY");
    request.header(
        "Content-Security-Policy",
        "default-src 'none'; style-src 'self' 'unsafe-inline'; img-src 'self' data:");
    request.header("Cache-Control", "no-store");
  }

  private void page(Context request) {
    StringOutput html = new StringOutput();
    templates.render("page.jte", overview.get(), html);
    request.html(html.toString());
  }

  private void health(Context request) {
    Health health = Health.of(overview.get());
    request.status(health.isWell() ? 200 : 503);
    json(request, health);
  }

  private void metrics(Context request) {
    Exposition format = Exposition.preferred(Optional.ofNullable(request.header("Accept")));
    request.header("Vary", "Accept");
    request.contentType(format.contentType()).result(metrics.scrape(format));
  }

  private void printers(Context request) {
    json(request, Map.of("printers", overview.get().printers()));
  }

  private void parts(Context request) {
    json(request, Map.of("parts", overview.get().parts()));
  }

  private static void json(Context request, Object answer) {
    request.contentType("application/json").result(AnswerJson.print(answer));
  }

  private static void notFound(Context request) {
    problem(
        request,
        404,
        "Nothing is served at "
            + request.path()
            + "; try /, /api/v1/printers, /api/v1/parts, /metrics or /healthz");
  }

  private static void failed(Exception cause, Context request) {
    LOG.error("{} {} failed", request.method(), request.path(), cause);
    problem(request, 500, "The request failed; the agent's log says why");
  }

  /** Problem details as of RFC 9457. */
  private static void problem(Context request, int status, String detail) {
    request.status(status);
    request
        .contentType("application/problem+json")
        .result(
            AnswerJson.print(Map.of("type", "about:blank", "status", status, "detail", detail)));
  }

  @Override
  public void close() {
    server.stop();
  }
}
