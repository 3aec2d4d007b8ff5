package meltkeeper.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Function;
import meltkeeper.alert.AlertSettings;
import meltkeeper.alert.route.Publishing;
import meltkeeper.alert.route.UndeliveredException;
import meltkeeper.caution.Guard;
import meltkeeper.cli.calls.BatchLimits;
import meltkeeper.config.From;
import meltkeeper.config.HotEndSettings;
import meltkeeper.config.PrinterSettings;
import meltkeeper.config.Settings;
import meltkeeper.jam.WatchSettings;
import meltkeeper.ledger.Limits;
import meltkeeper.pipeline.Calling;
import meltkeeper.pipeline.Decoders;
import meltkeeper.protocol.Decoder;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.gcode.GcodeDecoder;
import meltkeeper.protocol.mapping.MappingDecoder;
import meltkeeper.source.Source;
import meltkeeper.source.SteadyClock;
import meltkeeper.source.mqtt.MqttPublisher;
import meltkeeper.source.mqtt.MqttSource;
import meltkeeper.source.mqtt.Session;
import meltkeeper.source.serial.SerialSource;
import meltkeeper.source.tcp.TcpSource;

/** Makes each room's parts out of the settings. */
final class Joints {

  private Joints() {}

  /** A decoder for every broker and every printer with a line of its own. */
  static Decoders decoders(Settings settings) {
    Map<String, Decoder> byBroker = new LinkedHashMap<>();
    settings
        .brokers()
        .keySet()
        .forEach(name -> byBroker.put(name, new MappingDecoder(settings.routes(name))));
    Map<String, Decoder> byPrinter = new LinkedHashMap<>();
    for (PrinterSettings printer : settings.printers().values()) {
      if (!(printer.from() instanceof From.Mqtt)) {
        byPrinter.put(printer.name(), new GcodeDecoder(printer.name()));
      }
    }
    return new Decoders(byBroker, byPrinter);
  }

  /** What each hot end goes by; the defaults for one that is not listed. */
  static Function<HotEnd, Limits> limits(Settings settings) {
    Map<String, PrinterSettings> printers = settings.printers();
    return hotEnd ->
        printers.containsKey(hotEnd.printer())
            ? printers.get(hotEnd.printer()).hotEnd(hotEnd.index()).limits()
            : Limits.DEFAULT;
  }

  /** What calls for a batch go by. */
  static BatchLimits batchLimits(Settings settings) {
    Function<HotEnd, Limits> limits = limits(settings);
    return new BatchLimits(
        settings.alerts().atRiskAbove(), hotEnd -> limits.apply(hotEnd).hotAboveCelsius());
  }

  /** Bytes free on the disk of the store; empty where the computer cannot tell. */
  static OptionalLong freeBytes(Settings settings) {
    try {
      Path folder = Objects.requireNonNull(settings.storeFile().getParent(), "an absolute path");
      return OptionalLong.of(Files.getFileStore(folder).getUsableSpace());
    } catch (IOException e) {
      return OptionalLong.empty();
    }
  }

  /** What each hot end's jam watch goes by. */
  static Function<HotEnd, WatchSettings> watching(Settings settings) {
    return watching(settings, falseAlarmHours(settings));
  }

  /** Printing hours wanted between two false alarms. */
  static double falseAlarmHours(Settings settings) {
    return settings.falseAlarmEvery().toSeconds() / 3600.0;
  }

  /** The same with another number of printing hours between two false alarms. */
  static Function<HotEnd, WatchSettings> watching(Settings settings, double hours) {
    return hotEnd ->
        Optional.ofNullable(settings.printers().get(hotEnd.printer()))
            .map(printer -> printer.hotEnd(hotEnd.index()))
            .map(
                end ->
                    new WatchSettings(
                        hours,
                        end.limits().hotAboveCelsius(),
                        end.heaterWatts(),
                        end.encoder() == HotEndSettings.Encoder.BLIND))
            .orElseGet(() -> WatchSettings.DEFAULT.withFalseAlarmHours(hours));
  }

  /** What kinds of part must not exceed, of those that have a limit. */
  static Map<String, Double> limitsCelsius(Settings settings) {
    Map<String, Double> limits = new LinkedHashMap<>();
    settings
        .kinds()
        .forEach((name, kind) -> kind.limitCelsius().ifPresent(limit -> limits.put(name, limit)));
    return limits;
  }

  /** What calls whom. */
  static Calling calling(Settings settings) {
    AlertSettings alerts = settings.alerts();
    Function<HotEnd, Limits> limits = limits(settings);
    return new Calling(
        hotEnd ->
            new Guard(
                OptionalDouble.empty(),
                limits.apply(hotEnd).hotAboveCelsius(),
                alerts.idleAfter().toNanos(),
                alerts.silentAfter().toNanos()),
        limitsCelsius(settings),
        alerts::routesFor,
        hotEnd ->
            alerts.action().filter(a -> a.reaches(hasLine(settings, hotEnd))).map(a -> a.delay()),
        alerts.oldAfter().toNanos());
  }

  private static boolean hasLine(Settings settings, HotEnd hotEnd) {
    return Optional.ofNullable(settings.printers().get(hotEnd.printer()))
        .filter(printer -> !(printer.from() instanceof From.Mqtt))
        .isPresent();
  }

  /** Connections to the shop's brokers, on which alerts are published. */
  static Publishing.Maker publishing(Settings settings) {
    return (broker, timeout) ->
        new Publisher(
            new MqttPublisher(
                Objects.requireNonNull(settings.brokers().get(broker), broker), timeout));
  }

  private record Publisher(MqttPublisher publisher) implements Publishing {
    @Override
    public void publish(String topic, String payload, boolean retained)
        throws UndeliveredException, InterruptedException {
      try {
        publisher.publish(topic, payload, retained);
      } catch (IOException e) {
        throw UndeliveredException.forNow(String.valueOf(e.getMessage()));
      }
    }

    @Override
    public void close() {
      publisher.close();
    }
  }

  /** Everything that is to be listened to, not started yet. */
  static List<Source> sources(
      Settings settings, Function<String, Session> sessionAtBroker, SteadyClock clock) {
    List<Source> sources = new ArrayList<>();
    settings
        .brokers()
        .forEach(
            (name, broker) -> {
              var filters = new MappingDecoder(settings.routes(name)).subscriptions();
              if (!filters.isEmpty()) {
                sources.add(new MqttSource(broker, sessionAtBroker.apply(name), filters, clock));
              }
            });
    for (PrinterSettings printer : settings.printers().values()) {
      if (printer.from() instanceof From.Serial serial) {
        sources.add(SerialSource.of(serial.settings(), clock));
      } else if (printer.from() instanceof From.Tcp tcp) {
        sources.add(TcpSource.of(tcp.settings(), clock));
      }
    }
    return List.copyOf(sources);
  }
}
