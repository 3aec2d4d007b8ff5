package meltkeeper.alert.route;

import com.fasterxml.jackson.databind.node.ObjectNode;
import meltkeeper.store.Alert;
import meltkeeper.store.Subject;

/**
 * Publishes each alert at a broker twice: as an event, and as the retained state of its hot end,
 * part or printer, where whoever comes later finds it.
 */
final class MqttRoute implements Route {

  private final String prefix;
  private final Publishing broker;

  MqttRoute(String prefix, Publishing broker) {
    this.prefix = prefix;
    this.broker = broker;
  }

  @Override
  public void deliver(Message message) throws UndeliveredException, InterruptedException {
    Alert alert = message.alert();
    ObjectNode json = AlertJson.of(message);
    if (!message.isSample()) {
      json.put("open", alert.phase() != Alert.Phase.ALL_CLEAR);
      String state = prefix + "/state/" + place(alert.subject()) + "/" + alert.topic().label();
      broker.publish(state, json.toString(), true);
    }
    broker.publish(prefix + "/event", json.toString(), false);
  }

  private static String place(Subject subject) {
    return subject
        .partId()
        .map(part -> "part/" + part)
        .or(
            () ->
                subject.place().map(hotEnd -> "hot-end/" + hotEnd.printer() + "/" + hotEnd.index()))
        .or(() -> subject.printerName().map(printer -> "printer/" + printer))
        .orElse("agent");
  }

  @Override
  public void close() {
    broker.close();
  }
}
