package meltkeeper.source.serial;

import java.time.Duration;

/**
 * One printer on a serial port.
 *
 * @param device path of the port, {@code /dev/ttyUSB0}
 * @param baud bits a second
 * @param every how often to ask where the printer does not report by itself
 */
public record SerialSettings(String printer, String device, int baud, Duration every) {}
