package meltkeeper.demo;

import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The four printers, and the client by which three of them publish. One thread drives them. */
final class ShopFloor implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(ShopFloor.class);
  private static final Duration CLOG_BEGINS = Duration.ofMinutes(12);
  private static final Duration CLOG_CLOSES = Duration.ofMinutes(105);
  private static final Duration CLOG_CLEARED = Duration.ofMinutes(100);

  private final List<Desk> desks;
  private final SimulatedPrinter egret;
  private final GcodePort egretPort;
  private final MqttClient client;
  private final long everyNanos;
  private long publishedNanos;
  private volatile PrinterState egretState;

  private record Desk(SimulatedPrinter printer, Telling telling) {}

  ShopFloor(long startNanos, Duration every, URI broker) {
    everyNanos = every.toNanos();
    publishedNanos = startNanos;
    Trouble clog =
        new Trouble.Clog(
            startNanos + CLOG_BEGINS.toNanos(),
            CLOG_CLOSES.toNanos(),
            startNanos + CLOG_CLEARED.toNanos());
    desks =
        List.of(
            desk("heron", 1, startNanos, Telling.STATUS_JSON),
            desk("ibis", 2, startNanos, Telling.PLAIN_VALUES),
            new Desk(
                new SimulatedPrinter(PrinterSetup.usual("kestrel", 4, startNanos).having(clog)),
                Telling.STATUS_JSON));
    egret = new SimulatedPrinter(PrinterSetup.usual("egret", 3, startNanos));
    egretState = egret.state();
    client = connected(broker);
    egretPort = new GcodePort("egret", () -> egretState);
  }

  private static Desk desk(String name, long seed, long startNanos, Telling telling) {
    return new Desk(new SimulatedPrinter(PrinterSetup.usual(name, seed, startNanos)), telling);
  }

  int egretPort() {
    return egretPort.port();
  }

  /** Goes on to that moment, publishing whatever is due on the way. */
  void goOnTo(long nanos) {
    egret.advanceTo(nanos);
    egretState = egret.state();
    egretPort.tick();
    while (publishedNanos + everyNanos <= nanos) {
      publishedNanos += everyNanos;
      for (Desk desk : desks) {
        desk.printer().advanceTo(publishedNanos);
        desk.telling().messages(desk.printer().name(), desk.printer().state()).forEach(this::send);
      }
    }
  }

  private void send(Message message) {
    try {
      client.publish(message.topic(), message.payload().getBytes(StandardCharsets.UTF_8), 0, false);
    } catch (MqttException e) {
      LOG.warn("the demo's printers cannot publish: {}", e.getMessage());
    }
  }

  private static MqttClient connected(URI broker) {
    try {
      MqttClient client = new MqttClient(broker.toString(), "printers", new MemoryPersistence());
      client.connect();
      return client;
    } catch (MqttException e) {
      throw new IllegalStateException("the demo's printers cannot reach their broker", e);
    }
  }

  @Override
  public void close() {
    egretPort.close();
    try {
      client.disconnectForcibly(0, 1000);
      client.close();
    } catch (MqttException e) {
      LOG.debug("the demo's printers were cut off from their broker", e);
    }
  }
}
