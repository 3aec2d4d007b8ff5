package meltkeeper.config;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import meltkeeper.config.HotEndSettings.Encoder;
import meltkeeper.ledger.Limits;
import meltkeeper.part.Belief;
import meltkeeper.part.Kind;
import meltkeeper.protocol.Signal;
import meltkeeper.protocol.mapping.JsonPath;
import meltkeeper.protocol.mapping.Mapping;
import meltkeeper.protocol.mapping.MessageRule;
import meltkeeper.protocol.mapping.PayloadForm;
import meltkeeper.protocol.mapping.TopicPattern;
import meltkeeper.protocol.mapping.ValueRule;
import meltkeeper.source.mqtt.BrokerSettings;
import meltkeeper.source.tcp.TcpSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ConfigReaderTest {

  private static final String LEAST = "printers:\n  egret: { from: { tcp: 192.0.2.7:8899 } }\n";

  @Test
  void printersAlone_read_leavesTheRestToDefaults() {
    Settings settings = Shop.settings(LEAST);

    assertThat(settings.storeUrl()).endsWith("meltkeeper.db");
    assertThat(settings.web()).hasToString("127.0.0.1:8266");
    assertThat(settings.kinds()).containsOnlyKeys("liner", "nozzle", "heat-break");
    assertThat(settings.costs()).isEmpty();
    assertThat(settings.brokers()).isEmpty();
  }

  @Test
  void brokerWithEverything_read_findsFilesBesideTheConfiguration(@TempDir Path folder)
      throws Exception {
    Files.createDirectory(folder.resolve("keys"));
    Shop.secret(folder.resolve("keys/password"), "plover\n");
    Files.writeString(folder.resolve("ca.pem"), "certificates\n");
    Path file = folder.resolve("shop.yaml");
    Files.writeString(
        file,
        """
        store: jdbc:sqlite:shop.db
        brokers:
          hall:
            url: ssl://broker.example
            protocol: 3.1.1
            username: keeper
            password-file: keys/password
            ca-file: ca.pem
            client-id: keeper-1
        """
            + LEAST);

    Settings settings = ConfigReader.read(file).fold(valid -> valid, faults -> Shop.settings(""));

    assertThat(settings.storeUrl()).isEqualTo("jdbc:sqlite:" + folder.resolve("shop.db"));
    assertThat(settings.brokers())
        .containsEntry(
            "hall",
            new BrokerSettings(
                "hall",
                // 8883 is the port registered with IANA for MQTT over TLS.
                URI.create("ssl://broker.example:8883"),
                3,
                Optional.of("keeper"),
                Optional.of(folder.resolve("keys/password")),
                Optional.of(folder.resolve("ca.pem")),
                Optional.of("keeper-1")));
    assertThat(settings.toString()).doesNotContain("plover");
  }

  @Test
  void severalHotEnds_read_takeFromHotEndWhatTheyDoNotSay() {
    PrinterSettings egret =
        Shop.settings(
                """
                printers:
                  egret:
                    from: { tcp: "[2001:db8::7]:8899", every: 500ms, gap: 5m }
                    hot-end: { heater-watts: 60, encoder: blind }
                    hot-ends: { 1: { hot-above: 170 } }
                """)
            .printers()
            .get("egret");

    assertThat(egret)
        .isEqualTo(
            new PrinterSettings(
                "egret",
                new From.Tcp(new TcpSettings("egret", "2001:db8::7", 8899, Duration.ofMillis(500))),
                hotEnd(150, Duration.ofMinutes(5)),
                Map.of(1, hotEnd(170, Duration.ofMinutes(5))),
                meltkeeper.protocol.motion.MotionLimits.DEFAULT));
  }

  private static HotEndSettings hotEnd(double hotAbove, Duration gap) {
    return new HotEndSettings(
        new Limits(hotAbove, OptionalLong.of(gap.toNanos())), 60, Encoder.BLIND);
  }

  @Test
  void oneSignalOfTwoHotEnds_asAList_readsBoth() {
    Mapping twin =
        Shop.settings(
                """
                mappings:
                  twin:
                    - topic: "#"
                      read:
                        hot-end-temperature: [ /left, { at: /right, hot-end: 1, offset: -2 } ]
                """
                    + LEAST)
            .mappings()
            .get("twin");

    assertThat(twin)
        .isEqualTo(
            new Mapping(
                "twin",
                List.of(
                    new MessageRule(
                        TopicPattern.of("#"),
                        PayloadForm.JSON,
                        Optional.empty(),
                        List.of(
                            plain(Signal.HOT_END_TEMPERATURE, "/left"),
                            new ValueRule(
                                Signal.HOT_END_TEMPERATURE,
                                JsonPath.of("/right"),
                                1,
                                -2,
                                Map.of(),
                                1))))));
  }

  @Test
  void kinds_read_keepWhatIsKnownAndAddTheShopsOwn() {
    Map<String, Kind> kinds =
        Shop.settings(
                """
                kinds:
                  feed-gear: { price: 8, habit: { every: 60d }, limit: 120 }
                  liner: { belief: { life-hours: 400 } }
                """
                    + LEAST)
            .kinds();

    assertThat(kinds.keySet()).containsExactly("feed-gear", "liner", "nozzle", "heat-break");
    assertThat(kinds)
        .containsEntry(
            "feed-gear",
            new Kind(
                "feed-gear",
                8,
                0,
                Optional.empty(),
                Optional.of(Duration.ofDays(60)),
                Optional.empty(),
                OptionalDouble.of(120)))
        .containsEntry("liner", kind("liner", 0, 0, new Belief(400, 0.5, 2.5, 0.4, 10, 3, 220)));
  }

  @Test
  void anchoredSection_usedAgain_countsInBothPlaces() {
    Settings settings =
        Shop.settings(
            """
            printers:
              egret: { from: { tcp: 192.0.2.7:8899 }, hot-end: &wide { hot-above: 160 } }
              heron: { from: { tcp: 192.0.2.8:8899 }, hot-end: *wide }
            """);

    assertThat(settings.printers().values())
        .extracting(printer -> printer.hotEnd(0).limits().hotAboveCelsius())
        .containsExactly(160.0, 160.0);
  }

  @Test
  void routes_ofABroker_gatherItsPrintersByMapping() {
    Settings settings =
        Shop.settings(
            """
            brokers: { shop: { url: tcp://localhost }, hall: { url: tcp://hall.example:1884 } }
            mappings:
              status: [ { topic: "plant/{printer}", read: { job: /job } } ]
              unused: [ { topic: plant/all, read: { job: /job } } ]
            printers:
              heron: { from: { broker: shop, mapping: status } }
              ibis: { from: { broker: shop, mapping: status } }
              egret: { from: { broker: hall, mapping: status } }
            """);

    assertThat(settings.routes("shop")).hasSize(1);
    assertThat(settings.routes("shop").get(0).printers()).isEqualTo(Set.of("heron", "ibis"));
    assertThat(settings.routes("hall").get(0).printers()).isEqualTo(Set.of("egret"));
  }

  @Test
  void fileBeginningWithByteOrderMark_read_isValid() {
    assertThat(Shop.settings("\uFEFF" + LEAST).printers()).containsOnlyKeys("egret");
  }

  @Test
  void missingFile_read_namesWhereItWasLookedFor(@TempDir Path folder) {
    Path file = folder.resolve("absent.yaml");

    assertThat(ConfigReader.read(file))
        .hasToString(
            "Faulty[faults=[%s: --config: found \"no file\"; allowed: a configuration file; looked for %s]]"
                .formatted(file, file));
  }

  @Test
  void fileThatIsNoText_read_saysSo(@TempDir Path folder) throws Exception {
    Path file = Files.write(folder.resolve("shop.yaml"), new byte[] {(byte) 0xC3, 0x28});

    assertThat(ConfigReader.read(file).toString()).contains("text in UTF-8; save it as UTF-8");
  }

  @Test
  void folder_readAsAFile_saysSo(@TempDir Path folder) {
    assertThat(ConfigReader.read(folder).toString()).contains("allowed: a file");
  }

  private static ValueRule plain(Signal signal, String at) {
    return ValueRule.plain(signal, JsonPath.of(at));
  }

  private static Kind kind(String name, double price, double swapMinutes, Belief belief) {
    OptionalDouble limit = name.equals("liner") ? OptionalDouble.of(250) : OptionalDouble.empty();
    return new Kind(
        name, price, swapMinutes, Optional.of(belief), Optional.empty(), Optional.empty(), limit);
  }
}
