package meltkeeper.metrics.otlp;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import io.opentelemetry.proto.collector.metrics.v1.ExportMetricsServiceRequest;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/** A receiver of OTLP over HTTP on a port of the loopback interface; it decodes what it gets. */
final class Collector implements AutoCloseable {

  record Push(String contentType, String authorization, ExportMetricsServiceRequest request) {}

  private final HttpServer server;
  private final List<Push> pushes = new CopyOnWriteArrayList<>();
  private volatile int status = 200;

  Collector() throws IOException {
    server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.createContext("/v1/metrics", this::take);
    server.start();
  }

  private void take(HttpExchange exchange) throws IOException {
    try (exchange) {
      var headers = exchange.getRequestHeaders();
      pushes.add(
          new Push(
              String.valueOf(headers.getFirst("Content-Type")),
              String.valueOf(headers.getFirst("Authorization")),
              ExportMetricsServiceRequest.parseFrom(exchange.getRequestBody())));
      exchange.sendResponseHeaders(status, -1);
    }
  }

  URI url() {
    return URI.create("http://127.0.0.1:" + server.getAddress().getPort() + "/v1/metrics");
  }

  List<Push> pushes() {
    return pushes;
  }

  /** Answers so from now on. */
  void answer(int code) {
    status = code;
  }

  @Override
  public void close() {
    server.stop(0);
  }
}
