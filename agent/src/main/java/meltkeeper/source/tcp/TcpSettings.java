package meltkeeper.source.tcp;

import java.time.Duration;

/**
 * One printer behind a TCP port.
 *
 * @param every how often to ask where the printer does not report by itself
 */
public record TcpSettings(String printer, String host, int port, Duration every) {}
