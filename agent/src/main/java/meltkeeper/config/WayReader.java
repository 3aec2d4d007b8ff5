package meltkeeper.config;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import meltkeeper.alert.route.BodyTemplate;
import meltkeeper.alert.route.RouteSettings;
import meltkeeper.alert.route.RouteSettings.Way;

/**
 * Reads how a route reaches the other side: exactly one of its ways, and the keys that go with it.
 */
record WayReader(Folder folder, BrokerCheck brokers) {

  /** Tells the fault of a broker that is not listed. */
  interface BrokerCheck {
    boolean isKnown(Fields fields, Key<String> key, String name);
  }

  private static final Map<Key<?>, Set<Key<?>>> GO_WITH = goWith();

  private static Map<Key<?>, Set<Key<?>>> goWith() {
    Map<Key<?>, Set<Key<?>>> with = new LinkedHashMap<>();
    with.put(AlertKeys.MQTT, Set.of(AlertKeys.PREFIX));
    with.put(
        AlertKeys.WEBHOOK,
        Set.of(AlertKeys.BODY, AlertKeys.HEADERS, AlertKeys.TOKEN_FILE, AlertKeys.CA_FILE));
    with.put(
        AlertKeys.MAIL,
        Set.of(
            AlertKeys.ENCRYPTION,
            AlertKeys.FROM,
            AlertKeys.TO,
            AlertKeys.USERNAME,
            AlertKeys.PASSWORD_FILE,
            AlertKeys.CA_FILE));
    with.put(AlertKeys.ALERTMANAGER, Set.of(AlertKeys.TOKEN_FILE, AlertKeys.CA_FILE));
    with.put(AlertKeys.COMMAND, Set.of());
    return with;
  }

  Optional<Way> read(Fields fields) {
    List<Key<?>> given = GO_WITH.keySet().stream().filter(fields::has).toList();
    if (given.size() != 1) {
      fields
          .section()
          .tell(
              given.isEmpty() ? "none of them" : joined(" and ", given),
              "one of " + joined(", ", List.copyOf(GO_WITH.keySet())),
              "a route goes one way");
      return Optional.empty();
    }
    refuseOthers(fields, given.get(0));
    if (fields.has(AlertKeys.MQTT)) {
      return readMqtt(fields);
    }
    if (fields.has(AlertKeys.WEBHOOK)) {
      return readWebhook(fields);
    }
    if (fields.has(AlertKeys.MAIL)) {
      return readMail(fields);
    }
    if (fields.has(AlertKeys.ALERTMANAGER)) {
      Optional<Path> token = folder.secret(fields, AlertKeys.TOKEN_FILE);
      Optional<Path> ca = folder.file(fields, AlertKeys.CA_FILE);
      return fields
          .find(AlertKeys.ALERTMANAGER)
          .map(url -> new RouteSettings.Alertmanager(url, token, ca));
    }
    return AlertReader.program(fields, folder).map(RouteSettings.Command::new);
  }

  private static String joined(String between, List<Key<?>> keys) {
    return String.join(between, keys.stream().map(Key::label).toList());
  }

  private static void refuseOthers(Fields fields, Key<?> way) {
    GO_WITH.forEach(
        (other, keys) ->
            keys.stream()
                .filter(
                    key -> fields.has(key) && !GO_WITH.getOrDefault(way, Set.of()).contains(key))
                .forEach(
                    key ->
                        fields
                            .entryOrBlank(key)
                            .tell(
                                "the key " + key.label(),
                                key.label() + " with " + other.label(),
                                "this route goes by " + way.label() + "; remove it")));
  }

  private Optional<Way> readMqtt(Fields fields) {
    String prefix = fields.get(AlertKeys.PREFIX);
    return fields
        .find(AlertKeys.MQTT)
        .filter(broker -> brokers.isKnown(fields, AlertKeys.MQTT, broker))
        .map(broker -> new RouteSettings.Mqtt(broker, prefix));
  }

  private Optional<Way> readWebhook(Fields fields) {
    Optional<BodyTemplate> body = fields.find(AlertKeys.BODY).map(BodyTemplate::new);
    Map<String, String> headers = Headers.read(fields.entryOrBlank(AlertKeys.HEADERS));
    Optional<Path> token = folder.secret(fields, AlertKeys.TOKEN_FILE);
    Optional<Path> ca = folder.file(fields, AlertKeys.CA_FILE);
    return fields
        .find(AlertKeys.WEBHOOK)
        .map(url -> new RouteSettings.Webhook(url, body, headers, token, ca));
  }

  private Optional<Way> readMail(Fields fields) {
    var encryption = fields.get(AlertKeys.ENCRYPTION);
    Optional<String> from = fields.need(AlertKeys.FROM);
    List<String> to = readTo(fields);
    Optional<String> username = fields.find(AlertKeys.USERNAME);
    Optional<Path> password = folder.secret(fields, AlertKeys.PASSWORD_FILE);
    Optional<Path> ca = folder.file(fields, AlertKeys.CA_FILE);
    return fields
        .find(AlertKeys.MAIL)
        .flatMap(
            host ->
                from.map(
                    sender ->
                        new RouteSettings.Mail(
                            host.host(),
                            host.port(),
                            encryption,
                            sender,
                            to,
                            username,
                            password,
                            ca)));
  }

  private static List<String> readTo(Fields fields) {
    if (!fields.has(AlertKeys.TO)) {
      fields.section().tellMissing(AlertKeys.TO);
      return List.of();
    }
    Entry entry = fields.entryOrBlank(AlertKeys.TO);
    List<String> to = new ArrayList<>();
    (entry.isList() ? entry.elements() : List.of(entry))
        .forEach(one -> Fields.read(one, AlertKeys.ADDRESS).ifPresent(to::add));
    return to;
  }
}
