package meltkeeper.cli.service;

import java.io.IOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The service manager that started this process, if one did and wants to be told how it goes. Safe
 * for use by several threads.
 *
 * <p>It is told through its own {@code systemd-notify}: Java 17 has no datagram sockets of the Unix
 * kind, and a library for them would bring machine code for every processor and unpack it at each
 * start. A child process every forty seconds costs less, and is there wherever the manager is. The
 * protocol is that of sd_notify(3).
 */
public final class ServiceManager {

  private static final Logger LOG = LoggerFactory.getLogger(ServiceManager.class);
  private static final long PATIENCE_SECONDS = 30;

  private static final String SOCKET = "NOTIFY_SOCKET";

  private final Optional<String> socket;
  private final Optional<Duration> watchdog;
  private volatile boolean failed;

  private ServiceManager(Optional<String> socket, Optional<Duration> watchdog) {
    this.socket = socket;
    this.watchdog = watchdog;
  }

  /** Who started this process, by its environment; perhaps nobody who wants to be told. */
  public static ServiceManager of(Map<String, String> environment) {
    Optional<String> socket =
        Optional.ofNullable(environment.get(SOCKET)).filter(name -> !name.isEmpty());
    return new ServiceManager(
        socket, socket.flatMap(to -> watchdog(environment.getOrDefault("WATCHDOG_USEC", ""))));
  }

  private static Optional<Duration> watchdog(String micros) {
    return micros.matches("[1-9][0-9]{0,15}")
        ? Optional.of(Duration.ofNanos(Long.parseLong(micros) * 1000))
        : Optional.empty();
  }

  /** Ends us if it hears nothing of us for this long; empty when it does not watch. */
  Optional<Duration> watchdog() {
    return watchdog;
  }

  /** The process does what it was started for. */
  public void ready(String status) {
    tell("READY=1", "STATUS=" + status);
  }

  /** The process is alive. */
  void alive(String status) {
    tell("WATCHDOG=1", "STATUS=" + status);
  }

  /** The process is on its way out. */
  void stopping() {
    tell("STOPPING=1");
  }

  private void tell(String... states) {
    socket.ifPresent(
        to -> {
          List<String> command = new ArrayList<>(List.of("systemd-notify"));
          command.addAll(List.of(states));
          try {
            run(to, command);
          } catch (IOException e) {
            complain(e.toString());
          } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
          }
        });
  }

  private void run(String to, List<String> command) throws IOException, InterruptedException {
    ProcessBuilder builder =
        new ProcessBuilder(command)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .redirectError(ProcessBuilder.Redirect.DISCARD);
    builder.environment().put(SOCKET, to);
    Process process = builder.start();
    try {
      if (!process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
        complain("it did not end");
      } else if (process.exitValue() != 0) {
        complain("exit code " + process.exitValue());
      } else {
        failed = false;
      }
    } finally {
      process.destroyForcibly();
    }
  }

  private void complain(String why) {
    if (!failed) {
      LOG.warn("the service manager cannot be told how it goes: systemd-notify: {}", why);
    }
    failed = true;
  }
}
