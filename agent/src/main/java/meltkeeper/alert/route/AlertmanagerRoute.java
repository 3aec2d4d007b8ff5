package meltkeeper.alert.route;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.URI;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import meltkeeper.part.Moments;
import meltkeeper.store.Alert;

/**
 * Posts each alert to a Prometheus Alertmanager, which groups and silences by its own rules. It
 * forgets an alert that is not sent again before {@code endsAt}; reminders do that in time.
 */
final class AlertmanagerRoute implements Route {

  private static final String PATH = "api/v2/alerts";

  private final RouteSettings.Alertmanager way;
  private final Duration timeout;
  private final Duration lasting;

  /**
   * @param lasting how long an alert without an all-clear goes on there
   */
  AlertmanagerRoute(RouteSettings.Alertmanager way, Duration timeout, Duration lasting) {
    this.way = way;
    this.timeout = timeout;
    this.lasting = lasting;
  }

  @Override
  public void deliver(Message message) throws UndeliveredException, InterruptedException {
    String base = way.url().toString();
    URI url = URI.create(base + (base.endsWith("/") ? "" : "/") + PATH);
    HttpPost.to(url, Map.of(), way.tokenFile(), way.caFile(), timeout)
        .json(body(message).toString());
  }

  private ArrayNode body(Message message) {
    Alert alert = message.alert();
    ArrayNode alerts = JsonNodeFactory.instance.arrayNode();
    ObjectNode one = alerts.addObject();
    ObjectNode labels = one.putObject("labels");
    labels.put("alertname", message.isSample() ? "meltkeeper-test" : "meltkeeper");
    labels.put("topic", alert.topic().label());
    labels.put("severity", alert.topic().isPressing() ? "critical" : "warning");
    alert.subject().printerName().ifPresent(printer -> labels.put("printer", printer));
    alert
        .subject()
        .place()
        .ifPresent(hotEnd -> labels.put("hot_end", String.valueOf(hotEnd.index())));
    alert.subject().partId().ifPresent(part -> labels.put("part", part));
    ObjectNode annotations = one.putObject("annotations");
    annotations.put("summary", Words.title(message));
    annotations.put("description", alert.text());
    annotations.put("cautions", String.join(" ", alert.cautions()));
    annotations.put("id", alert.id());
    Instant began = Moments.instant(alert.episode().beganNanos());
    one.put("startsAt", began.toString());
    one.put("endsAt", ends(message).toString());
    return alerts;
  }

  private Instant ends(Message message) {
    Instant at = Moments.instant(message.alert().atNanos());
    boolean isOver = message.isSample() || message.alert().phase() == Alert.Phase.ALL_CLEAR;
    return isOver ? at : at.plus(lasting);
  }
}
