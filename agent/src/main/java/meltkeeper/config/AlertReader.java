package meltkeeper.config;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import meltkeeper.alert.AlertSettings;
import meltkeeper.alert.OutboxLimits;
import meltkeeper.alert.route.JamAction;
import meltkeeper.alert.route.QuietHours;
import meltkeeper.alert.route.RouteSettings;
import meltkeeper.alert.route.RouteSettings.Way;
import meltkeeper.protocol.Nearest;
import meltkeeper.protocol.gcode.Request;
import meltkeeper.store.AlertTopic;

/**
 * Reads who is called, and when.
 *
 * @param brokers that a route may name
 */
record AlertReader(Folder folder, ZoneId zone, Set<String> brokers) {

  AlertSettings read(Fields fields, Map<String, Entry> routeEntries) {
    List<RouteSettings> routes = new ArrayList<>();
    routeEntries.forEach((name, route) -> readRoute(name, route).ifPresent(routes::add));
    return new AlertSettings(
        fields.get(AlertKeys.REMIND),
        fields.get(AlertKeys.OLD_AFTER),
        fields.get(AlertKeys.IDLE_AFTER),
        fields.get(AlertKeys.SILENT_AFTER),
        fields.get(AlertKeys.AT_RISK_ABOVE),
        fields.get(AlertKeys.ATTEMPTS),
        new OutboxLimits(fields.get(AlertKeys.KEEP), fields.get(AlertKeys.MOST_WAITING)),
        routes,
        fields.entry(AlertKeys.JAM_ACTION).flatMap(this::readAction));
  }

  private Optional<RouteSettings> readRoute(String name, Entry entry) {
    if (name.equals(JamAction.NAME)) {
      entry.tell(name, "another name for a route", "this one is the jam action's");
    }
    Fields fields = Fields.of(entry, Section.ROUTE);
    Set<AlertTopic> topics = readTopics(fields);
    Optional<QuietHours> quiet = fields.entry(AlertKeys.QUIET).flatMap(this::readQuiet);
    var timeout = fields.get(AlertKeys.TIMEOUT);
    return new WayReader(folder, this::broker)
        .read(fields)
        .map((Way way) -> new RouteSettings(name, topics, quiet, timeout, way));
  }

  private static Set<AlertTopic> readTopics(Fields fields) {
    if (!fields.has(AlertKeys.TOPICS)) {
      return EnumSet.allOf(AlertTopic.class);
    }
    Entry entry = fields.entryOrBlank(AlertKeys.TOPICS);
    if (!entry.isList() || entry.elements().isEmpty()) {
      entry.tell(entry.shown(), AlertKeys.A_TOPIC.allowed(), "write a list: [ jam-stalled ]");
    }
    Set<AlertTopic> topics = EnumSet.noneOf(AlertTopic.class);
    entry
        .elements()
        .forEach(element -> Fields.read(element, AlertKeys.A_TOPIC).ifPresent(topics::add));
    return topics;
  }

  private Optional<QuietHours> readQuiet(Entry entry) {
    Fields fields = Fields.of(entry, Section.QUIET);
    Optional<LocalTime> from = fields.need(AlertKeys.QUIET_FROM);
    Optional<LocalTime> until = fields.need(AlertKeys.QUIET_UNTIL);
    if (from.isPresent() && from.equals(until)) {
      entry.tell("the same time twice", "two times of day", "leave quiet out to be called always");
      return Optional.empty();
    }
    return from.flatMap(begin -> until.map(end -> new QuietHours(begin, end, zone)));
  }

  private Optional<JamAction> readAction(Entry entry) {
    Fields fields = Fields.of(entry, Section.JAM_ACTION);
    boolean publishes =
        Stream.of(AlertKeys.ACTION_BROKER, AlertKeys.ACTION_TOPIC, AlertKeys.ACTION_PAYLOAD)
            .anyMatch(fields::has);
    Optional<JamAction.Note> message = publishes ? readNote(fields) : Optional.empty();
    List<Request.Ordered> lines = readLines(fields.entryOrBlank(AlertKeys.ACTION_SEND));
    var delay = fields.get(AlertKeys.ACTION_DELAY);
    if (!publishes && !fields.has(AlertKeys.ACTION_SEND)) {
      entry.tell(
          "neither of them",
          "broker with topic and payload, or send, or both",
          "leave jam-action out to do nothing");
    }
    return message.isEmpty() && lines.isEmpty()
        ? Optional.empty()
        : Optional.of(new JamAction(message, lines, delay));
  }

  private Optional<JamAction.Note> readNote(Fields fields) {
    Optional<String> broker =
        fields
            .need(AlertKeys.ACTION_BROKER)
            .filter(b -> broker(fields, AlertKeys.ACTION_BROKER, b));
    Optional<String> topic = fields.need(AlertKeys.ACTION_TOPIC);
    Optional<String> payload = fields.need(AlertKeys.ACTION_PAYLOAD);
    return broker.flatMap(b -> topic.flatMap(t -> payload.map(p -> new JamAction.Note(b, t, p))));
  }

  private static List<Request.Ordered> readLines(Entry entry) {
    List<Request.Ordered> lines = new ArrayList<>();
    (entry.isList() ? entry.elements() : entry.isBlank() ? List.<Entry>of() : List.of(entry))
        .forEach(one -> Fields.read(one, AlertKeys.LINE).ifPresent(lines::add));
    return lines;
  }

  Optional<CommandTopic> readCommands(Entry entry) {
    Fields fields = Fields.of(entry, Section.COMMANDS);
    String topic = fields.get(AlertKeys.COMMANDS_TOPIC);
    return fields
        .need(AlertKeys.COMMANDS_BROKER)
        .filter(name -> broker(fields, AlertKeys.COMMANDS_BROKER, name))
        .map(name -> new CommandTopic(name, topic));
  }

  private boolean broker(Fields fields, Key<String> key, String name) {
    if (brokers.contains(name)) {
      return true;
    }
    fields
        .entryOrBlank(key)
        .tell(
            name,
            brokers.isEmpty()
                ? "a name from brokers, of which there is none"
                : "a name from brokers: " + String.join(", ", brokers),
            Nearest.to(name, brokers).map(near -> "the nearest is " + near).orElse(""));
    return false;
  }

  /** The program of a key; its fault is told when it cannot be run. */
  static Optional<Path> program(Fields fields, Folder folder) {
    Optional<Path> program =
        fields.find(AlertKeys.COMMAND).map(folder.path()::resolve).map(Path::normalize);
    program
        .filter(path -> !Files.isRegularFile(path) || !Files.isExecutable(path))
        .ifPresent(
            path ->
                fields
                    .entryOrBlank(AlertKeys.COMMAND)
                    .tell(
                        path.toString(),
                        AlertKeys.COMMAND.form().allowed(),
                        Files.exists(path)
                            ? "let the user that runs Meltkeeper execute it"
                            : "there is no such file"));
    return program;
  }
}
