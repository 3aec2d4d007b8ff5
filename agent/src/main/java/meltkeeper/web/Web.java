package meltkeeper.web;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.config.SizeUnit;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import meltkeeper.desk.AnswerJson;
import meltkeeper.metrics.Exposition;
import meltkeeper.metrics.Metrics;
import meltkeeper.web.api.Answering;
import meltkeeper.web.api.Api;
import meltkeeper.web.api.LimitedStream;
import meltkeeper.web.api.Mishap;
import meltkeeper.web.api.Problem;
import meltkeeper.web.guard.Doors;
import meltkeeper.web.guard.Guard;
import meltkeeper.web.guard.WebSettings;
import meltkeeper.web.page.Pages;
import meltkeeper.web.view.AgentView;

/** Serves the page, the API, the metrics and the health of the agent over HTTP. */
public final class Web implements AutoCloseable {

  private static final long MOST_BODY_BYTES = 1L << 20;

  private final AgentView agent;
  private final Metrics metrics;
  private final Guard guard;
  private final Pages pages;
  private final Javalin server;

  /**
   * Starts to serve.
   *
   * @throws io.javalin.util.JavalinBindException when the address is not to be had
   */
  public Web(WebSettings settings, AgentView agent, Metrics metrics) {
    this.agent = agent;
    this.metrics = metrics;
    this.guard = new Guard(settings, () -> TimeUnit.NANOSECONDS.toSeconds(agent.nowNanos()));
    this.pages = new Pages(agent, guard);
    this.server = Javalin.create(config -> configure(config, settings));
    try {
      server.start();
    } catch (RuntimeException e) {
      pages.close();
      throw e;
    }
  }

  private void configure(JavalinConfig config, WebSettings settings) {
    config.startup.showJavalinBanner = false;
    config.startup.showOldJavalinVersionWarning = false;
    config.http.maxRequestSize = MOST_BODY_BYTES;
    config.http.prefer405over404 = true;
    config.jetty.multipartConfig.maxFileSize(LimitedStream.MOST_BYTES, SizeUnit.BYTES);
    config.jetty.multipartConfig.maxTotalRequestSize(
        LimitedStream.MOST_BYTES + MOST_BODY_BYTES, SizeUnit.BYTES);
    config.jetty.multipartConfig.maxInMemoryFileSize(64, SizeUnit.KB);
    Doors.open(settings, config.jetty);
    config.routes.before(guard::look);
    config.routes.get("/healthz", this::health);
    config.routes.get("/metrics", this::metrics);
    new Api(agent).serve(config.routes);
    pages.serve(config.routes);
    config.routes.error(404, this::notFound);
    config.routes.error(405, this::notFound);
    config.routes.exception(HttpResponseException.class, this::refused);
    config.routes.exception(Exception.class, this::failed);
  }

  /** The port that is served. */
  public int port() {
    return server.port();
  }

  private void health(Context request) {
    Health health = Health.of(agent);
    request.status(health.isWell() ? 200 : 503);
    request.contentType("application/json").result(AnswerJson.print(health));
  }

  private void metrics(Context request) {
    Exposition format = Exposition.preferred(Optional.ofNullable(request.header("Accept")));
    request.header("Vary", "Accept");
    request.contentType(format.contentType()).result(metrics.scrape(format));
  }

  private void notFound(Context request) {
    if (!Problem.CONTENT_TYPE.equals(request.res().getContentType())) {
      tell(
          request,
          Problem.of(
              request.statusCode(),
              "Nothing answers "
                  + request.method()
                  + " "
                  + request.path()
                  + "; /api/v1/openapi.json tells what does, and / is the page"));
    }
  }

  /** What the server refuses by itself; where nothing answers, {@link #notFound} says so. */
  private void refused(HttpResponseException cause, Context request) {
    request.status(cause.getStatus());
    if (cause.getStatus() != 404 && cause.getStatus() != 405) {
      failed(cause, request);
    }
  }

  private void failed(Exception cause, Context request) {
    tell(request, Mishap.problem(request, cause));
  }

  private void tell(Context request, Problem problem) {
    if (pages.isPage(request)) {
      pages.tell(request, problem);
    } else {
      Answering.tell(request, problem);
    }
  }

  @Override
  public void close() {
    pages.close();
    server.stop();
  }
}
