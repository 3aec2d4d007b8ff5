package meltkeeper.source.serial;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.io.IOException;
import java.nio.file.Path;
import meltkeeper.source.Wire;
import meltkeeper.source.WireOpener;

/** Opens one serial port, 8 data bits, no parity, 1 stop bit, no flow control. */
record SerialOpener(String device, int baud) implements WireOpener {

  private static final int DATA_BITS = 8;

  @Override
  public Wire open() throws IOException {
    Path present = SerialWire.whatIsAt(device);
    SerialPort port;
    try {
      port = SerialPort.getCommPort(present.toString());
    } catch (SerialPortInvalidPortException e) {
      throw new IOException(device + " is no serial port", e);
    }
    port.setComPortParameters(baud, DATA_BITS, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY);
    port.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
    if (!port.openPort()) {
      throw new IOException(
          device
              + " cannot be opened, error "
              + port.getLastErrorCode()
              + "; it may be in use, or this user may lack the right (group dialout)");
    }
    return new SerialWire(port, device, present);
  }

  @Override
  public String place() {
    return device;
  }
}
