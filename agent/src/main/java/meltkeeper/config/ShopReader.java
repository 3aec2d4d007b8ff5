package meltkeeper.config;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import meltkeeper.alert.AlertSettings;
import meltkeeper.part.Costs;
import meltkeeper.part.Kind;
import meltkeeper.part.Names;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.mapping.Mapping;
import meltkeeper.source.mqtt.BrokerSettings;
import meltkeeper.web.guard.WebSettings;

/** Reads the whole file. */
final class ShopReader {

  /** A printer is called as its topics call it, so that its name may be freer than others. */
  private static final Form<String> PRINTER_NAME =
      Form.of(
          "1 to 60 characters without / + # and {}, and no space at either end",
          "",
          name ->
              Optional.of(name)
                  .filter(text -> text.matches("(?! )[^/+#{}\\p{Cntrl}]{1,60}(?<! )")));

  private ShopReader() {}

  /** The settings; to be used only when no fault was told. */
  static Settings read(Entry file, Path folder) {
    Fields fields = Fields.of(file, Section.ROOT);
    String store = readStore(fields, folder);
    WebSettings web =
        new HttpReader(new Folder(folder))
            .read(Fields.of(fields.entryOrBlank(Keys.HTTP), Section.HTTP));
    ZoneId zone = fields.find(Keys.ZONE).orElseGet(ZoneId::systemDefault);

    Map<String, Entry> brokerEntries = named(fields, Keys.BROKERS, ShopReader::nameFault);
    Map<String, Entry> mappingEntries = named(fields, Keys.MAPPINGS, ShopReader::nameFault);
    BrokerReader brokerReader = new BrokerReader(new Folder(folder));
    Map<String, BrokerSettings> brokers = each(brokerEntries, brokerReader::read);
    Map<String, Mapping> mappings =
        each(mappingEntries, (name, entry) -> Optional.of(MappingReader.read(name, entry)));

    Map<String, Entry> printerEntries = named(fields, Keys.PRINTERS, PRINTER_NAME.check());
    if (!fields.has(Keys.PRINTERS)) {
      file.tellMissing(Keys.PRINTERS);
    } else if (fields.entryOrBlank(Keys.PRINTERS).isBlank()) {
      fields
          .entryOrBlank(Keys.PRINTERS)
          .tell("nothing", "printers by name, or {} while there is none", "add one below its name");
    }
    PrinterReader printerReader =
        new PrinterReader(brokerEntries.keySet(), mappingEntries.keySet());
    Map<String, PrinterSettings> printers = each(printerEntries, printerReader::read);
    new SharingCheck(printers, printerEntries, mappings, mappingEntries).tell();

    Map<String, Kind> kinds = readKinds(fields);
    Optional<Costs> costs = fields.entry(Keys.COSTS).flatMap(ShopReader::readCosts);
    AlertReader alertReader = new AlertReader(new Folder(folder), zone, brokerEntries.keySet());
    Duration falseAlarmEvery =
        Fields.of(fields.entryOrBlank(Keys.JAM_WATCH), Section.JAM).get(Keys.FALSE_ALARM_EVERY);
    return new Settings(
        store,
        web,
        zone,
        brokers,
        mappings,
        printers,
        kinds,
        costs,
        falseAlarmEvery,
        readAlerts(fields, alertReader),
        fields.entry(Keys.COMMANDS).flatMap(alertReader::readCommands),
        new MetricsReader(new Folder(folder))
            .read(Fields.of(fields.entryOrBlank(Keys.METRICS), Section.METRICS)),
        readCopies(fields, store, folder));
  }

  private static CopySettings readCopies(Fields file, String store, Path folder) {
    Fields fields = Fields.of(file.entryOrBlank(Keys.BACKUP), Section.BACKUP);
    Path to =
        fields
            .find(Keys.BACKUP_FOLDER)
            .map(folder::resolve)
            .orElse(StoreUrl.file(store, folder).resolveSibling("backups"));
    return new CopySettings(to.normalize(), fields.get(Keys.KEEP));
  }

  private static AlertSettings readAlerts(Fields file, AlertReader reader) {
    Fields alerts = Fields.of(file.entryOrBlank(Keys.ALERTS), Section.ALERTS);
    return reader.read(alerts, named(alerts, AlertKeys.ROUTES, ShopReader::nameFault));
  }

  private static String readStore(Fields fields, Path folder) {
    String url = fields.get(Keys.STORE);
    Path parent = StoreUrl.file(url, folder).getParent();
    if (parent != null && !Files.isDirectory(parent)) {
      fields
          .entryOrBlank(Keys.STORE)
          .tell(url, "a file in a folder that exists", "make the folder " + parent);
    }
    return StoreUrl.resolved(url, folder);
  }

  private static Optional<Fault> nameFault(String name) {
    return Names.fault("", name);
  }

  /** The entries of a section whose keys are names; tells the names that break the rule. */
  private static Map<String, Entry> named(
      Fields fields, Key<Void> key, Function<String, Optional<Fault>> rule) {
    Map<String, Entry> entries = fields.entryOrBlank(key).children();
    entries.forEach(
        (name, entry) ->
            rule.apply(name)
                .ifPresent(
                    fault ->
                        entry
                            .faults()
                            .add(
                                entry.line(),
                                Fault.of(entry.path(), "the name " + name, fault.allowed()))));
    return entries;
  }

  private static <T> Map<String, T> each(
      Map<String, Entry> entries, BiFunction<String, Entry, Optional<T>> reader) {
    Map<String, T> read = new LinkedHashMap<>();
    entries.forEach(
        (name, entry) -> reader.apply(name, entry).ifPresent(value -> read.put(name, value)));
    return read;
  }

  private static Map<String, Kind> readKinds(Fields fields) {
    Map<String, Entry> entries = named(fields, Keys.KINDS, ShopReader::nameFault);
    Map<String, Kind> kinds = new LinkedHashMap<>();
    entries.forEach(
        (name, entry) -> {
          if (nameFault(name).isEmpty()) {
            kinds.put(name, KindReader.read(name, entry));
          }
        });
    KindReader.KNOWN.forEach(kinds::putIfAbsent);
    return kinds;
  }

  private static Optional<Costs> readCosts(Entry entry) {
    if (entry.isBlank()) {
      return Optional.empty();
    }
    Fields fields = Fields.of(entry, Section.COSTS);
    double labour = fields.get(Keys.LABOUR_PER_HOUR);
    double jam = fields.get(Keys.JAM);
    return fields.need(Keys.CURRENCY).map(currency -> new Costs(currency, labour, jam));
  }
}
