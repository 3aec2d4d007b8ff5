package meltkeeper.config;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import meltkeeper.ledger.Limits;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.Nearest;
import meltkeeper.protocol.motion.MotionLimits;
import meltkeeper.source.serial.SerialSettings;
import meltkeeper.source.tcp.TcpSettings;

/** Reads one printer. */
final class PrinterReader {

  private static final String ONE_SOURCE = "one of broker, serial and tcp";

  private static final Form<Integer> INDEX =
      Forms.whole(0, HotEnd.MAX_INDEX, "the index of a hot end");

  private final Set<String> brokers;
  private final Set<String> mappings;

  /** Reads printers that may name these brokers and mappings. */
  PrinterReader(Set<String> brokers, Set<String> mappings) {
    this.brokers = brokers;
    this.mappings = mappings;
  }

  Optional<PrinterSettings> read(String name, Entry entry) {
    Fields fields = Fields.of(entry, Section.PRINTER);
    Optional<From> from = Optional.empty();
    OptionalLong gap = OptionalLong.empty();
    if (fields.has(Keys.PRINTER_FROM)) {
      Fields source = Fields.of(fields.entryOrBlank(Keys.PRINTER_FROM), Section.FROM);
      from = readFrom(name, source);
      gap =
          source
              .find(Keys.GAP)
              .map(limit -> OptionalLong.of(limit.toNanos()))
              .orElse(OptionalLong.empty());
    } else {
      entry.tellMissing(Keys.PRINTER_FROM);
    }
    HotEndSettings usual = readHotEnd(fields.entryOrBlank(Keys.HOT_END), gap, Optional.empty());
    Map<Integer, HotEndSettings> hotEnds = readHotEnds(fields, gap, usual);
    MotionLimits motion = MotionReader.read(fields.entryOrBlank(Keys.MOTION));
    return from.map(source -> new PrinterSettings(name, source, usual, hotEnds, motion));
  }

  private Optional<From> readFrom(String name, Fields fields) {
    List<Key<?>> given =
        List.<Key<?>>of(Keys.BROKER, Keys.SERIAL, Keys.TCP).stream().filter(fields::has).toList();
    if (given.size() != 1) {
      fields
          .section()
          .tell(
              given.isEmpty()
                  ? "none of them"
                  : String.join(" and ", given.stream().map(Key::label).toList()),
              ONE_SOURCE,
              "a printer is read from one place");
      return Optional.empty();
    }
    if (fields.has(Keys.BROKER)) {
      refuse(fields, "with serial or tcp", Keys.EVERY);
      refuse(fields, "with serial", Keys.BAUD);
      return readMqtt(fields);
    }
    refuse(fields, "with broker", Keys.MAPPING);
    Duration every = fields.get(Keys.EVERY);
    if (fields.has(Keys.TCP)) {
      refuse(fields, "with serial", Keys.BAUD);
      return fields
          .find(Keys.TCP)
          .map(at -> new From.Tcp(new TcpSettings(name, at.host(), at.port(), every)));
    }
    int baud = fields.get(Keys.BAUD);
    return fields
        .find(Keys.SERIAL)
        .map(device -> new From.Serial(new SerialSettings(name, device, baud, every)));
  }

  private Optional<From> readMqtt(Fields fields) {
    Optional<String> broker =
        fields.find(Keys.BROKER).filter(name -> isKnown(fields, Keys.BROKER, name, brokers));
    Optional<String> mapping =
        fields.need(Keys.MAPPING).filter(name -> isKnown(fields, Keys.MAPPING, name, mappings));
    return broker.flatMap(at -> mapping.map(by -> new From.Mqtt(at, by)));
  }

  private static boolean isKnown(Fields fields, Key<String> key, String name, Set<String> known) {
    if (known.contains(name)) {
      return true;
    }
    String section = key.label() + "s";
    fields
        .entryOrBlank(key)
        .tell(
            name,
            known.isEmpty()
                ? "a name from " + section + ", which are none yet"
                : "a name from " + section + ": " + String.join(", ", known),
            Nearest.to(name, known)
                .map(nearest -> "the nearest is " + nearest)
                .orElse("name one of them, or add it"));
    return false;
  }

  private static void refuse(Fields fields, String where, Key<?> key) {
    fields.entry(key).ifPresent(entry -> entry.tell(entry.shown(), "only " + where, "remove it"));
  }

  private static Map<Integer, HotEndSettings> readHotEnds(
      Fields fields, OptionalLong gap, HotEndSettings usual) {
    Map<Integer, HotEndSettings> hotEnds = new LinkedHashMap<>();
    fields
        .entryOrBlank(Keys.HOT_ENDS)
        .children()
        .forEach(
            (index, entry) -> {
              INDEX.check().apply(index).ifPresent(entry::tell);
              HotEndSettings settings = readHotEnd(entry, gap, Optional.of(usual));
              if (INDEX.check().apply(index).isEmpty()) {
                hotEnds.put(INDEX.read(index), settings);
              }
            });
    return hotEnds;
  }

  private static HotEndSettings readHotEnd(
      Entry entry, OptionalLong gap, Optional<HotEndSettings> usual) {
    Fields fields = Fields.of(entry, Section.HOT_END);
    double hotAbove =
        fields
            .find(Keys.HOT_ABOVE)
            .or(() -> usual.map(settings -> settings.limits().hotAboveCelsius()))
            .orElseGet(Keys.HOT_ABOVE::defaultValue);
    double watts =
        fields
            .find(Keys.HEATER_WATTS)
            .or(() -> usual.map(HotEndSettings::heaterWatts))
            .orElseGet(Keys.HEATER_WATTS::defaultValue);
    HotEndSettings.Encoder encoder =
        fields
            .find(Keys.ENCODER)
            .or(() -> usual.map(HotEndSettings::encoder))
            .orElseGet(Keys.ENCODER::defaultValue);
    return new HotEndSettings(new Limits(hotAbove, gap), watts, encoder);
  }
}
