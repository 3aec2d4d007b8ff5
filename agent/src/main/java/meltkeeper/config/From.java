package meltkeeper.config;

import meltkeeper.source.serial.SerialSettings;
import meltkeeper.source.tcp.TcpSettings;

/** Where a printer's readings come from. */
public sealed interface From {

  /**
   * Messages at a broker.
   *
   * @param broker its name in {@link Settings#brokers()}
   * @param mapping its name in {@link Settings#mappings()}
   */
  record Mqtt(String broker, String mapping) implements From {}

  /** Lines on a serial port. */
  record Serial(SerialSettings settings) implements From {}

  /** Lines over a TCP port. */
  record Tcp(TcpSettings settings) implements From {}
}
