package meltkeeper.config;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import meltkeeper.alert.AlertSettings;
import meltkeeper.alert.OutboxLimits;
import meltkeeper.config.HotEndSettings.Encoder;
import meltkeeper.ledger.Limits;
import meltkeeper.metrics.MetricsSettings;
import meltkeeper.part.Belief;
import meltkeeper.part.Costs;
import meltkeeper.part.Kind;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.Signal;
import meltkeeper.protocol.mapping.JsonPath;
import meltkeeper.protocol.mapping.Mapping;
import meltkeeper.protocol.mapping.MessageRule;
import meltkeeper.protocol.mapping.PayloadForm;
import meltkeeper.protocol.mapping.TimeFormat;
import meltkeeper.protocol.mapping.TimeRule;
import meltkeeper.protocol.mapping.TopicPattern;
import meltkeeper.protocol.mapping.ValueRule;
import meltkeeper.source.mqtt.BrokerSettings;
import meltkeeper.source.serial.SerialSettings;
import meltkeeper.source.tcp.TcpSettings;
import meltkeeper.web.guard.WebSettings;
import org.junit.jupiter.api.Test;

/** The example in the documents is valid, and means what it says. */
class ExampleTest {

  @Test
  void example_read_givesExactlyItsSettings() {
    Settings settings = Shop.settings(Shop.document("example.yaml"));

    HotEndSettings hotEnd =
        new HotEndSettings(new Limits(150, OptionalLong.empty()), 40, Encoder.DIRECTIONAL);
    assertThat(settings)
        .isEqualTo(
            new Settings(
                "jdbc:sqlite:" + Path.of("meltkeeper.db").toAbsolutePath(),
                WebSettings.plain("127.0.0.1", 8266),
                ZoneId.systemDefault(),
                Map.of("shop", plainBroker("shop", "tcp://127.0.0.1:1883")),
                Map.of("status-json", statusJson(), "plain-values", plainValues()),
                Map.of(
                    "heron",
                    new PrinterSettings(
                        "heron",
                        new From.Mqtt("shop", "status-json"),
                        hotEnd,
                        Map.of(),
                        meltkeeper.protocol.motion.MotionLimits.DEFAULT),
                    "ibis",
                    new PrinterSettings(
                        "ibis",
                        new From.Serial(
                            new SerialSettings(
                                "ibis", "/dev/ttyUSB0", 115_200, Duration.ofSeconds(2))),
                        hotEnd,
                        Map.of(),
                        meltkeeper.protocol.motion.MotionLimits.DEFAULT),
                    "egret",
                    new PrinterSettings(
                        "egret",
                        new From.Tcp(
                            new TcpSettings("egret", "192.0.2.7", 8899, Duration.ofSeconds(2))),
                        hotEnd,
                        Map.of(),
                        meltkeeper.protocol.motion.MotionLimits.DEFAULT)),
                Map.of(
                    "liner",
                    kind("liner", 4.5, 15, new Belief(600, 0.35, 2.5, 0.4, 10, 3, 220)),
                    "nozzle",
                    kind("nozzle", 12, 10, new Belief(1200, 0.5, 2, 0.4, 10, 3, 220)),
                    "heat-break",
                    kind("heat-break", 0, 0, new Belief(5000, 0.7, 2, 0.4, 10, 3, 220))),
                Optional.of(new Costs("EUR", 25, 18)),
                Duration.ofHours(1000),
                new AlertSettings(
                    Duration.ofHours(4),
                    Duration.ofMinutes(10),
                    Duration.ofMinutes(30),
                    Duration.ofMinutes(10),
                    0.1,
                    100,
                    OutboxLimits.DEFAULT,
                    List.of(),
                    Optional.empty()),
                Optional.empty(),
                new MetricsSettings(Duration.ofMinutes(15), Optional.empty()),
                new CopySettings(Path.of("backups").toAbsolutePath(), 7)));
  }

  private static BrokerSettings plainBroker(String name, String url) {
    return new BrokerSettings(
        name,
        URI.create(url),
        5,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private static Mapping statusJson() {
    return new Mapping(
        "status-json",
        List.of(
            new MessageRule(
                TopicPattern.of("plant/{printer}/status"),
                PayloadForm.JSON,
                Optional.of(new TimeRule(JsonPath.of("/at"), TimeFormat.ISO)),
                List.of(
                    plain(Signal.HOT_END_TEMPERATURE, "/hotend/now"),
                    plain(Signal.HOT_END_TARGET, "/hotend/set"),
                    new ValueRule(
                        Signal.HEATER_DUTY,
                        JsonPath.of("/hotend/pwm"),
                        0.0078740157,
                        0,
                        Map.of(),
                        0),
                    plain(Signal.FILAMENT_COMMANDED, "/feed/asked"),
                    plain(Signal.FILAMENT_MEASURED, "/feed/seen"),
                    new ValueRule(
                        Signal.JOB_STATE,
                        JsonPath.of("/job/state"),
                        1,
                        0,
                        Map.of(
                            "RUN", JobState.PRINTING,
                            "HOLD", JobState.PAUSED,
                            "REST", JobState.IDLE),
                        0),
                    plain(Signal.JOB, "/job/name"),
                    plain(Signal.MATERIAL, "/spool/material")))));
  }

  private static Mapping plainValues() {
    return new Mapping(
        "plain-values",
        List.of(
            new MessageRule(
                TopicPattern.of("plant/{printer}/hotend/now"),
                PayloadForm.NUMBER,
                Optional.empty(),
                List.of(plain(Signal.HOT_END_TEMPERATURE, "")))));
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
