package meltkeeper.cli.doctor;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributes;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import meltkeeper.config.From;
import meltkeeper.config.Settings;

/** What the agent stands on: Java, disk, clock, serial ports. */
final class ComputerCheck {

  private static final long LITTLE_BYTES = 256L << 20;
  private static final long TOO_LITTLE_BYTES = 32L << 20;
  private static final Path SYNCHRONIZED = Path.of("/run/systemd/timesync/synchronized");

  private final Settings settings;
  private final Instant now;
  private final Optional<Instant> lastHeard;

  /**
   * @param lastHeard when the store last heard of any printer
   */
  ComputerCheck(Settings settings, Instant now, Optional<Instant> lastHeard) {
    this.settings = settings;
    this.now = now;
    this.lastHeard = lastHeard;
  }

  List<Finding> findings() {
    List<Finding> findings = new ArrayList<>();
    findings.add(
        Finding.well(
            "Java",
            "%s, heap of at most %d MB"
                .formatted(Runtime.version(), Runtime.getRuntime().maxMemory() >> 20)));
    findings.add(disk());
    findings.add(clock());
    settings.printers().values().stream()
        .filter(printer -> printer.from() instanceof From.Serial)
        .forEach(
            printer ->
                findings.add(port(Path.of(((From.Serial) printer.from()).settings().device()))));
    return findings;
  }

  private Finding disk() {
    Path folder = Optional.ofNullable(settings.storeFile().getParent()).orElse(Path.of(""));
    try {
      long free = Files.getFileStore(folder).getUsableSpace();
      String found = "%d MB free in %s".formatted(free >> 20, folder);
      if (free < TOO_LITTLE_BYTES) {
        return Finding.bad("disk", found, "make room, or the store takes no commits");
      }
      return free < LITTLE_BYTES
          ? Finding.weak(
              "disk", found, "make room: a printer takes 5 to 13 MB a year, copies aside")
          : Finding.well("disk", found);
    } catch (IOException e) {
      return Finding.bad("disk", e.toString(), "see that the folder can be reached");
    }
  }

  private Finding clock() {
    if (lastHeard.filter(heard -> heard.isAfter(now.plusSeconds(60))).isPresent()) {
      return Finding.bad(
          "clock",
          "it says %s, but the store last heard a printer at %s".formatted(now, lastHeard.get()),
          "set the clock; the agent goes on from the later time until then");
    }
    return isSynchronized()
        ? Finding.well("clock", now + ", held right over the network")
        : Finding.weak(
            "clock",
            now + ", and nobody is known to hold it right",
            "run timedatectl set-ntp true; a computer without a clock of its own needs it at each"
                + " start");
  }

  private static boolean isSynchronized() {
    if (Files.exists(SYNCHRONIZED)) {
      return true;
    }
    try {
      Process process =
          new ProcessBuilder("timedatectl", "show", "--property=NTPSynchronized", "--value")
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
      if (!process.waitFor(5, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        return false;
      }
      return new String(
              process.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8)
          .strip()
          .equals("yes");
    } catch (IOException e) {
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  private static Finding port(Path device) {
    String about = "port " + device;
    if (!Files.exists(device)) {
      return Finding.weak(about, "it is not there", "plug the printer in and switch it on");
    }
    if (Files.isReadable(device) && Files.isWritable(device)) {
      return Finding.well(about, "this user may use it");
    }
    return Finding.bad(
        about,
        "the user %s may not use it".formatted(System.getProperty("user.name")),
        "add that user to the group %s and log in anew".formatted(group(device)));
  }

  private static String group(Path device) {
    try {
      return Files.readAttributes(device, PosixFileAttributes.class).group().getName();
    } catch (IOException | UnsupportedOperationException e) {
      return "of the port";
    }
  }
}
