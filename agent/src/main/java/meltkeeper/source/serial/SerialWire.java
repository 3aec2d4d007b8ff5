package meltkeeper.source.serial;

import com.fazecast.jSerialComm.SerialPort;
import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import meltkeeper.source.Wire;

/** An open serial port. */
final class SerialWire implements Wire {

  private final SerialPort port;
  private final String device;
  private final Path present;

  SerialWire(SerialPort port, String device, Path present) {
    this.port = port;
    this.device = device;
    this.present = present;
  }

  /** The port that a path, often a link that names a plug, leads to now. */
  static Path whatIsAt(String device) throws IOException {
    try {
      return Path.of(device).toRealPath();
    } catch (NoSuchFileException e) {
      throw new IOException(device + " does not exist; is it plugged in?", e);
    }
  }

  @Override
  public int read(byte[] into, Duration atMost) throws IOException {
    // A time-out of zero would wait for ever.
    int millis = (int) Math.max(1, atMost.toMillis());
    port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, millis, 0);
    int count = port.readBytes(into, into.length);
    if (count < 0) {
      throw new IOException(device + " was unplugged");
    }
    if (count == 0 && !whatIsAt(device).equals(present)) {
      // Some drivers read as silent after the plug is gone.
      throw new IOException(device + " is another port now");
    }
    return count;
  }

  @Override
  public void write(byte[] bytes) throws IOException {
    if (port.writeBytes(bytes, bytes.length) != bytes.length) {
      throw new IOException(device + " took nothing; it may be unplugged");
    }
  }

  @Override
  public void close() {
    port.closePort();
  }
}
