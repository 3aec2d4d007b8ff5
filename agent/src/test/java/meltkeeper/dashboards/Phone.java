package meltkeeper.dashboards;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/** Whoever Alertmanager tells: keeps each alert as {@code firing MeltkeeperNarrowing kestrel}. */
final class Phone implements AutoCloseable {

  private final HttpServer server;
  private final List<String> told = new CopyOnWriteArrayList<>();

  Phone() throws IOException {
    server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.createContext("/", this::take);
    server.start();
  }

  private void take(HttpExchange exchange) throws IOException {
    try (exchange) {
      for (JsonNode alert : new ObjectMapper().readTree(exchange.getRequestBody()).get("alerts")) {
        told.add(
            String.join(
                " ",
                alert.get("status").asText(),
                alert.at("/labels/alertname").asText(),
                alert.at("/labels/printer").asText()));
      }
      exchange.sendResponseHeaders(200, -1);
    }
  }

  String url() {
    return "http://127.0.0.1:" + server.getAddress().getPort() + "/";
  }

  List<String> told() {
    return told;
  }

  @Override
  public void close() {
    server.stop(0);
  }
}
