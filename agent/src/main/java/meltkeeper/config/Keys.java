package meltkeeper.config;

import static meltkeeper.config.Key.NONE;
import static meltkeeper.config.Key.REQUIRED;

import java.math.BigDecimal;
import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import meltkeeper.ledger.Limits;
import meltkeeper.part.Belief;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.mapping.JsonPath;
import meltkeeper.protocol.mapping.PayloadForm;
import meltkeeper.protocol.mapping.TimeFormat;
import meltkeeper.protocol.mapping.TopicPattern;

/** Every key of the file, section by section. */
final class Keys {

  private static final List<Key<?>> LISTED = new ArrayList<>();

  /** All of them. */
  static final List<Key<?>> ALL = Collections.unmodifiableList(LISTED);

  private static final Form<Void> SECTION = Form.section("a section");

  static final Key<String> STORE =
      key(Section.ROOT, "store", StoreUrl.FORM, "jdbc:sqlite:meltkeeper.db");
  static final Key<Void> HTTP = key(Section.ROOT, "http", SECTION, NONE);
  static final Key<ZoneId> ZONE = key(Section.ROOT, "zone", Forms.zone(), "the computer's own");
  static final Key<Void> BROKERS = key(Section.ROOT, "brokers", SECTION, NONE);
  static final Key<Void> MAPPINGS = key(Section.ROOT, "mappings", SECTION, NONE);
  static final Key<Void> PRINTERS = key(Section.ROOT, "printers", SECTION, REQUIRED);
  static final Key<Void> KINDS = key(Section.ROOT, "kinds", SECTION, "the known kinds");
  static final Key<Void> COSTS = key(Section.ROOT, "costs", SECTION, NONE);
  static final Key<Void> JAM_WATCH = key(Section.ROOT, "jam", SECTION, NONE);
  static final Key<Void> ALERTS = key(Section.ROOT, "alerts", SECTION, NONE);
  static final Key<Void> COMMANDS = key(Section.ROOT, "commands", SECTION, NONE);
  static final Key<Void> METRICS = key(Section.ROOT, "metrics", SECTION, "the defaults below");
  static final Key<Void> BACKUP = key(Section.ROOT, "backup", SECTION, "the defaults below");

  static final Key<HostPort> LISTEN =
      key(
          Section.HTTP,
          "listen",
          Forms.hostPort(0, "write 127.0.0.1:8266, or [::1]:8266 for IPv6"),
          "127.0.0.1:8266");
  static final Key<Void> NAMES =
      key(Section.HTTP, "names", Form.section("a list of host names"), "localhost and addresses");
  static final Form<String> A_HOST_NAME =
      Form.of(
          "a host name, such as shelf.shop.example",
          "without http:// and without a port",
          text ->
              Optional.of(text).filter(name -> name.matches("[A-Za-z0-9][A-Za-z0-9.-]{0,252}")));
  static final Key<Path> TOKEN_FILE =
      key(Section.HTTP, "token-file", Forms.path("a file that meltkeeper token wrote"), NONE);
  static final Key<Boolean> TOKEN_FOR_READS =
      key(
          Section.HTTP,
          "token-for-reads",
          Form.of(
              "true or false",
              "",
              text ->
                  Optional.of(text)
                      .filter(word -> word.equals("true") || word.equals("false"))
                      .map(Boolean::valueOf)),
          "false");
  static final Key<Path> KEY_FILE =
      key(Section.HTTP, "key-file", Forms.path("a file that can be read"), NONE);
  static final Key<Path> CERTIFICATE_FILE =
      key(Section.HTTP, "certificate-file", Forms.path("a file that can be read"), NONE);

  static final Key<Integer> KEEP =
      key(Section.BACKUP, "keep", Forms.whole(0, 366, "days; 0 makes no copies"), "7");
  static final Key<Path> BACKUP_FOLDER =
      key(Section.BACKUP, "folder", Forms.path("a folder; it is made"), "backups beside the store");

  static final Key<URI> URL = key(Section.BROKER, "url", Forms.broker(), REQUIRED);
  static final Key<Integer> PROTOCOL =
      key(Section.BROKER, "protocol", Form.of("5 or 3.1.1", "", Keys::protocolLevel), "5");
  static final Key<String> USERNAME = key(Section.BROKER, "username", Forms.text(200), NONE);
  static final Key<Path> PASSWORD_FILE =
      key(Section.BROKER, "password-file", Forms.path("a file that can be read"), NONE);
  static final Key<Path> CA_FILE =
      key(Section.BROKER, "ca-file", Forms.path("a file that can be read"), NONE);
  static final Key<String> CLIENT_ID =
      key(Section.BROKER, "client-id", Forms.text(200), "one that follows from the installation");

  static final Key<TopicPattern> TOPIC =
      key(
          Section.RULE,
          "topic",
          new Form<>(
              "an MQTT topic filter, with {printer} where the printer's name stands",
              TopicPattern::fault,
              TopicPattern::of),
          REQUIRED);
  static final Key<PayloadForm> PAYLOAD =
      key(Section.RULE, "payload", Form.choice(PayloadForm.class, PayloadForm::label), "json");
  static final Key<Void> TIME = key(Section.RULE, "time", SECTION, "time of arrival");
  static final Key<Void> READ = key(Section.RULE, "read", SECTION, REQUIRED);

  private static final Form<JsonPath> POINTER =
      new Form<>("a JSON Pointer (RFC 6901)", JsonPath::fault, JsonPath::of);

  static final Key<JsonPath> TIME_AT = key(Section.TIME, "at", POINTER, REQUIRED);
  static final Key<TimeFormat> FORMAT =
      key(Section.TIME, "format", Form.choice(TimeFormat.class, TimeFormat::label), REQUIRED);

  static final Key<JsonPath> VALUE_AT = key(Section.VALUE, "at", POINTER, REQUIRED);
  static final Key<Double> SCALE =
      key(Section.VALUE, "scale", Forms.anyNumber("a number other than 0"), "1");
  static final Key<Double> OFFSET = key(Section.VALUE, "offset", Forms.anyNumber("a number"), "0");
  static final Key<Void> WORDS =
      key(
          Section.VALUE,
          "words",
          Form.section("the printer's words, each with printing, paused or idle"),
          "those words themselves");
  static final Key<Integer> HOT_END_INDEX =
      key(Section.VALUE, "hot-end", Forms.whole(0, HotEnd.MAX_INDEX, "the first being 0"), "0");

  static final Key<Void> PRINTER_FROM = key(Section.PRINTER, "from", SECTION, REQUIRED);
  static final Key<Void> HOT_END = key(Section.PRINTER, "hot-end", SECTION, "the defaults below");
  static final Key<Void> HOT_ENDS =
      key(
          Section.PRINTER,
          "hot-ends",
          Form.section("sections like hot-end, by index"),
          "all as hot-end says");

  static final Key<Void> MOTION = key(Section.PRINTER, "motion", SECTION, "the defaults below");

  static final Key<String> BROKER = key(Section.FROM, "broker", Forms.name("brokers"), NONE);
  static final Key<String> MAPPING =
      key(Section.FROM, "mapping", Forms.name("mappings"), "required with broker");
  static final Key<String> SERIAL =
      key(
          Section.FROM,
          "serial",
          Form.of(
              "the path of a serial port",
              "write it from the root, as /dev/ttyUSB0",
              text -> Optional.of(text).filter(path -> path.matches("/.*[^/]|COM\\d{1,3}"))),
          NONE);
  static final Key<Integer> BAUD =
      key(Section.FROM, "baud", Forms.whole(300, 4_000_000, "bits a second"), "115200");
  static final Key<HostPort> TCP =
      key(Section.FROM, "tcp", Forms.hostPort(1, "write 192.0.2.7:8899"), NONE);
  static final Key<Duration> EVERY =
      key(Section.FROM, "every", Forms.duration("500ms", "1h"), "2s");
  static final Key<Duration> GAP =
      key(
          Section.FROM,
          "gap",
          Forms.duration("1s", "12h"),
          "30s, or five usual periods if that is longer");

  static final Key<Double> HEATER_WATTS =
      key(Section.HOT_END, "heater-watts", Forms.number("1", "1000", "watts"), "40");
  static final Key<Double> HOT_ABOVE =
      key(
          Section.HOT_END,
          "hot-above",
          Forms.number("0", "600", "°C"),
          written(Limits.DEFAULT_HOT_ABOVE_CELSIUS));
  static final Key<HotEndSettings.Encoder> ENCODER =
      key(
          Section.HOT_END,
          "encoder",
          Form.choice(
              HotEndSettings.Encoder.class,
              encoder -> encoder == HotEndSettings.Encoder.BLIND ? "blind" : "directional"),
          "directional");

  static final Key<Double> ACCELERATION =
      key(Section.MOTION, "acceleration", acceleration(), "1500");
  static final Key<Double> TRAVEL_ACCELERATION =
      key(Section.MOTION, "travel-acceleration", acceleration(), "2000");
  static final Key<Double> FILAMENT_ACCELERATION =
      key(Section.MOTION, "filament-acceleration", acceleration(), "1500");
  static final Key<Double> JUNCTION_DEVIATION =
      key(Section.MOTION, "junction-deviation", Forms.number("0", "1", "mm"), "0.05");
  static final Key<Double> PLATE_SPEED =
      key(Section.MOTION, "plate-speed", Forms.number("1", "2000", "mm/s"), "300");
  static final Key<Double> HEIGHT_SPEED =
      key(Section.MOTION, "height-speed", Forms.number("0.1", "500", "mm/s"), "15");
  static final Key<Double> FILAMENT_SPEED =
      key(Section.MOTION, "filament-speed", Forms.number("0.1", "500", "mm/s"), "60");
  static final Key<Double> HEATING =
      key(Section.MOTION, "heating", Forms.number("0.1", "50", "K/s"), "2");
  static final Key<Double> COOLING =
      key(Section.MOTION, "cooling", Forms.number("0.05", "50", "K/s"), "1");
  static final Key<Double> PLATE_HEATING =
      key(Section.MOTION, "plate-heating", Forms.number("0.01", "50", "K/s"), "0.5");
  static final Key<Duration> HOMING =
      key(Section.MOTION, "homing", Forms.duration("0s", "10m"), "20s");
  static final Key<Integer> LOOK_AHEAD =
      key(Section.MOTION, "look-ahead", Forms.whole(1, 10_000, "moves"), "32");

  private static final String BY_KIND = ", or the known kind's";

  static final Key<Double> PRICE =
      key(Section.KIND, "price", Forms.number("0", "1000000", "in the shop's currency"), "0");
  static final Key<Double> SWAP_MINUTES =
      key(Section.KIND, "swap-minutes", Forms.number("0", "1440", "minutes"), "0");
  static final Key<Void> BELIEF = key(Section.KIND, "belief", SECTION, NONE + BY_KIND);
  static final Key<Void> HABIT = key(Section.KIND, "habit", SECTION, NONE);
  static final Key<Void> CLEANING = key(Section.KIND, "cleaning", SECTION, NONE);
  static final Key<Double> LIMIT =
      key(Section.KIND, "limit", Forms.number("0", "600", "°C"), NONE + BY_KIND);

  static final Key<Double> LIFE_HOURS =
      key(
          Section.BELIEF,
          "life-hours",
          Forms.numberAbove("0", "1000000", "hours"),
          REQUIRED + BY_KIND);
  static final Key<Double> SPREAD =
      key(Section.BELIEF, "spread", Forms.numberAbove("0", "5", "of the logarithm"), "0.5");
  static final Key<Double> SHAPE =
      key(Section.BELIEF, "shape", Forms.numberAbove("0", "50", ""), "2");
  static final Key<Double> SHAPE_SPREAD =
      key(
          Section.BELIEF,
          "shape-spread",
          Forms.numberAbove("0", "5", "of the logarithm"),
          written(Belief.DEFAULT_SHAPE_SPREAD));
  static final Key<Double> HALVING =
      key(
          Section.BELIEF,
          "halving",
          Forms.numberAbove(written(Belief.MIN_HALVING), "100", "kelvin"),
          "10");
  static final Key<Double> HALVING_SPREAD =
      key(
          Section.BELIEF,
          "halving-spread",
          Forms.numberAbove("0", "100", "kelvin"),
          written(Belief.DEFAULT_HALVING_SPREAD));
  static final Key<Double> BELIEF_AT =
      key(Section.BELIEF, "at", Forms.number("0", "600", "°C"), "220");

  static final Key<Duration> HABIT_EVERY =
      key(Section.HABIT, "every", Forms.duration("1d", "3650d"), REQUIRED);

  static final Key<Double> CLEANING_MINUTES =
      key(Section.CLEANING, "minutes", Forms.number("0", "1440", "minutes"), "20");
  static final Key<Double> CLEANING_MONEY =
      key(Section.CLEANING, "money", Forms.number("0", "1000000", "in the shop's currency"), "0");
  static final Key<Double> CLEANING_RESTORES =
      key(Section.CLEANING, "restores", Forms.number("0", "1", "of its age"), "0.5");

  static final Key<Duration> FALSE_ALARM_EVERY =
      key(Section.JAM, "false-alarm-every", Forms.duration("1h", "100000h"), "1000h");

  static final Key<String> CURRENCY = key(Section.COSTS, "currency", Forms.text(10), REQUIRED);
  static final Key<Double> LABOUR_PER_HOUR =
      key(Section.COSTS, "labour-per-hour", Forms.number("0", "1000000", "in the currency"), "0");
  static final Key<Double> JAM =
      key(Section.COSTS, "jam", Forms.number("0", "1000000", "in the currency"), "0");

  static {
    LISTED.addAll(AlertKeys.LISTED);
    LISTED.addAll(MetricsKeys.LISTED);
  }

  private Keys() {}

  private static <T> Key<T> key(Section section, String label, Form<T> form, String byDefault) {
    Key<T> key = new Key<>(section, label, form, byDefault);
    LISTED.add(key);
    return key;
  }

  private static Form<Double> acceleration() {
    return Forms.number("10", "100000", "mm/s²");
  }

  private static String written(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }

  private static Optional<Integer> protocolLevel(String text) {
    return switch (text) {
      case "5" -> Optional.of(5);
      case "3.1.1" -> Optional.of(3);
      default -> Optional.empty();
    };
  }
}
