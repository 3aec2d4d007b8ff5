package meltkeeper.alert.route;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import meltkeeper.part.Moments;
import meltkeeper.store.Alert;

/** An alert as JSON, the same on every route; {@code docs/alerts.md} tells its fields. */
final class AlertJson {

  private AlertJson() {}

  static ObjectNode of(Message message) {
    Alert alert = message.alert();
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("id", alert.id());
    json.put("episode", alert.episode().id());
    json.put("topic", alert.topic().label());
    json.put("phase", alert.phase().label());
    json.put("pressing", alert.topic().isPressing());
    alert.subject().printerName().ifPresent(printer -> json.put("printer", printer));
    alert.subject().place().ifPresent(hotEnd -> json.put("hot_end", hotEnd.index()));
    alert.subject().partId().ifPresent(part -> json.put("part", part));
    json.put("began", Moments.instant(alert.episode().beganNanos()).toString());
    json.put("at", Moments.instant(alert.atNanos()).toString());
    json.put("title", Words.title(message));
    json.put("text", alert.text());
    ArrayNode cautions = json.putArray("cautions");
    alert.cautions().forEach(cautions::add);
    json.put("sample", message.isSample());
    return json;
  }
}
