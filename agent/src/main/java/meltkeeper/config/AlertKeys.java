package meltkeeper.config;

import static meltkeeper.config.Key.NONE;
import static meltkeeper.config.Key.REQUIRED;

import java.net.URI;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import meltkeeper.alert.route.BodyTemplate;
import meltkeeper.alert.route.RouteSettings.Encryption;
import meltkeeper.protocol.gcode.Request;
import meltkeeper.store.AlertTopic;

/** The keys that say who is called, and when, and who may call. */
final class AlertKeys {

  /** All of them, in the order of the document. */
  static final List<Key<?>> LISTED = new ArrayList<>();

  static final Form<AlertTopic> A_TOPIC =
      Form.of(
          Arrays.stream(AlertTopic.values())
              .map(AlertTopic::label)
              .collect(Collectors.joining(", ")),
          "",
          AlertTopic::of);

  static final Form<String> ADDRESS =
      Form.of(
          "an address like owner@shop.example",
          "",
          text -> Optional.of(text).filter(mail -> mail.matches("[^\\s@<>]+@[^\\s@<>]+")));

  static final Form<String> HEADER = Forms.text(1000);

  private static final Form<Void> SECTION = Form.section("a section");
  private static final Form<Path> A_FILE = Forms.path("a file that can be read");
  private static final Form<LocalTime> TIME_OF_DAY =
      Form.of("a time of day", "write 22:00", AlertKeys::timeOfDay);

  static final Key<Duration> REMIND =
      key(Section.ALERTS, "remind", Forms.duration("5m", "30d"), "4h");
  static final Key<Duration> OLD_AFTER =
      key(Section.ALERTS, "old-after", Forms.duration("1m", "1d"), "10m");
  static final Key<Duration> IDLE_AFTER =
      key(Section.ALERTS, "idle-after", Forms.duration("1m", "7d"), "30m");
  static final Key<Duration> SILENT_AFTER =
      key(Section.ALERTS, "silent-after", Forms.duration("1m", "7d"), "10m");
  static final Key<Double> AT_RISK_ABOVE =
      key(Section.ALERTS, "at-risk-above", Forms.numberAbove("0", "1", "a probability"), "0.1");
  static final Key<Integer> ATTEMPTS =
      key(Section.ALERTS, "attempts", Forms.whole(1, 10_000, "tries"), "100");
  static final Key<Duration> KEEP =
      key(Section.ALERTS, "keep", Forms.duration("1d", "3650d"), "90d");
  static final Key<Integer> MOST_WAITING =
      key(Section.ALERTS, "most-waiting", Forms.whole(10, 10_000, "alerts"), "500");
  static final Key<Void> ROUTES = key(Section.ALERTS, "routes", SECTION, NONE);
  static final Key<Void> JAM_ACTION = key(Section.ALERTS, "jam-action", SECTION, NONE);

  static final Key<String> MQTT = key(Section.ROUTE, "mqtt", Forms.name("brokers"), NONE);
  static final Key<String> PREFIX =
      key(
          Section.ROUTE,
          "prefix",
          Form.of(
              "levels of a topic, without + and #",
              "",
              text -> Optional.of(text).filter(prefix -> prefix.matches("[^+#\\s/][^+#]{0,99}"))),
          "meltkeeper");
  static final Key<URI> WEBHOOK = key(Section.ROUTE, "webhook", WebAddress.FORM, NONE);
  static final Key<String> BODY =
      key(
          Section.ROUTE,
          "body",
          new Form<>(BodyTemplate.ALLOWED, BodyTemplate::fault, text -> text),
          "the alert as JSON");
  static final Key<Void> HEADERS =
      key(Section.ROUTE, "headers", Form.section("names of headers, each with its value"), NONE);
  static final Key<URI> ALERTMANAGER = key(Section.ROUTE, "alertmanager", WebAddress.FORM, NONE);
  static final Key<Path> TOKEN_FILE = key(Section.ROUTE, "token-file", A_FILE, NONE);
  static final Key<HostPort> MAIL =
      key(Section.ROUTE, "mail", Forms.hostPort(1, "write mail.shop.example:587"), NONE);
  static final Key<Encryption> ENCRYPTION =
      key(
          Section.ROUTE,
          "encryption",
          Form.choice(Encryption.class, one -> one.name().toLowerCase(Locale.ROOT)),
          "starttls");
  static final Key<String> FROM = key(Section.ROUTE, "from", ADDRESS, "required with mail");
  static final Key<Void> TO =
      key(Section.ROUTE, "to", Form.section("an address, or a list of them"), "required with mail");
  static final Key<String> USERNAME = key(Section.ROUTE, "username", Forms.text(200), NONE);
  static final Key<Path> PASSWORD_FILE = key(Section.ROUTE, "password-file", A_FILE, NONE);
  static final Key<Path> CA_FILE = key(Section.ROUTE, "ca-file", A_FILE, NONE);
  static final Key<Path> COMMAND =
      key(Section.ROUTE, "command", Forms.path("a program that can be run"), NONE);
  static final Key<Void> TOPICS =
      key(Section.ROUTE, "topics", Form.section("a list of topics"), "all of them");
  static final Key<Void> QUIET = key(Section.ROUTE, "quiet", SECTION, NONE);
  static final Key<Duration> TIMEOUT =
      key(Section.ROUTE, "timeout", Forms.duration("500ms", "2m"), "10s");

  static final Key<LocalTime> QUIET_FROM = key(Section.QUIET, "from", TIME_OF_DAY, REQUIRED);
  static final Key<LocalTime> QUIET_UNTIL = key(Section.QUIET, "until", TIME_OF_DAY, REQUIRED);

  static final Key<String> ACTION_BROKER =
      key(Section.JAM_ACTION, "broker", Forms.name("brokers"), "required without send");
  static final Key<String> ACTION_TOPIC =
      key(
          Section.JAM_ACTION,
          "topic",
          Form.of(
              "a topic, with {printer} where the printer's name stands",
              "",
              text -> Optional.of(text).filter(topic -> topic.matches("[^+#]{1,200}"))),
          "required with broker");
  static final Key<String> ACTION_PAYLOAD =
      key(Section.JAM_ACTION, "payload", Forms.text(4000), "required with broker");

  static final Form<Request.Ordered> LINE =
      Form.of(Request.Ordered.ALLOWED, "", Request.Ordered::read);

  static final Key<Void> ACTION_SEND =
      key(Section.JAM_ACTION, "send", Form.section("a G-code line, or a list of them"), NONE);
  static final Key<Duration> ACTION_DELAY =
      key(Section.JAM_ACTION, "delay", Forms.duration("0s", "1h"), "2m");

  static final Key<String> COMMANDS_BROKER =
      key(Section.COMMANDS, "broker", Forms.name("brokers"), REQUIRED);
  static final Key<String> COMMANDS_TOPIC =
      key(Section.COMMANDS, "topic", PREFIX.form(), "meltkeeper/command");

  private AlertKeys() {}

  private static <T> Key<T> key(Section section, String label, Form<T> form, String byDefault) {
    Key<T> key = new Key<>(section, label, form, byDefault);
    LISTED.add(key);
    return key;
  }

  private static Optional<LocalTime> timeOfDay(String text) {
    try {
      return text.matches("\\d\\d:\\d\\d") ? Optional.of(LocalTime.parse(text)) : Optional.empty();
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }
}
