package meltkeeper.endure;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import meltkeeper.testing.RealParts;

/**
 * The file system of the store meets an error and takes no more writes, as a worn SD card's does;
 * it is repaired and mounted again later. A real ext4 on a loop device, made to report an error;
 * only root may do so.
 */
public final class ReadOnlyDisk implements Ordeal {

  private static final int MOST = 10;
  private static final int SOME = 20;
  private static final long SIZE_BYTES = 32L << 20;

  @Override
  public String fault() {
    return "file system turns read-only (ext4 on a loop device reports an error), repaired later";
  }

  @Override
  public Tried endure(int times, long seed, Path folder) throws Exception {
    if (!System.getProperty("user.name").equals("root")) {
      throw RealParts.missing("the privilege to mount a loop device");
    }
    int tries = Math.min(times, MOST);
    Random random = new Random(seed);
    Path image = folder.resolve("disk.img");
    long lost = 0;
    long doubled = 0;
    try (RampShop shop = new RampShop(folder, new Ramp(1e-4))) {
      Files.write(image, new byte[0]);
      run("truncate", "--size=" + SIZE_BYTES, image.toString());
      run("mkfs.ext4", "-q", image.toString());
      for (int i = 0; i < tries; i++) {
        mount(image, shop.state());
        try (AgentProcess agent = shop.agent()) {
          agent.awaitReady();
          RampShop.until("it has connected", () -> agent.logged().contains("connected to"));
          shop.publish(SOME);
          shop.untilCredited();
          breakDisk(image);
          shop.publish(1 + random.nextInt(SOME));
          RampShop.until("unwell", () -> agent.get("/healthz").contains("store-trouble"));
          BrokerOrdeal.measured(agent, "meltkeeper_store_up 0");
          BrokerOrdeal.logged(agent, "credits are kept in memory and tried again");
          if (!agent.isAlive()) {
            throw new AssertionError("the agent ended:\n" + agent.logged());
          }
          agent.kill();
        } finally {
          run("umount", shop.state().toString());
        }
        repair(image);
        mount(image, shop.state());
        try (AgentProcess agent = shop.agent()) {
          agent.awaitReady();
          RampShop.until("it has connected", () -> agent.logged().contains("connected to"));
          shop.publish(SOME);
          Books books = shop.untilCredited();
          lost += books.lostNanos();
          doubled += books.doubledNanos();
          agent.end();
        } finally {
          run("umount", shop.state().toString());
        }
      }
    }
    return new Tried(
        fault(),
        tries,
        lost,
        doubled,
        "log: “credits are kept in memory and tried again”, `store_up` 0, `/healthz` 503; the agent stays up");
  }

  private static void mount(Path image, Path folder) throws Exception {
    int code =
        Namespace.code(
            List.of("mount", "-o", "loop,errors=remount-ro", image.toString(), folder.toString()));
    if (code != 0) {
      throw RealParts.missing("mount of a loop device, which needs root,");
    }
  }

  /** Lets the file system report an error, on which it takes no more writes. */
  private static void breakDisk(Path image) throws IOException {
    try (Stream<Path> loops = Files.list(Path.of("/sys/block"))) {
      for (Path loop : loops.filter(ReadOnlyDisk::isLoop).toList()) {
        Path backing = loop.resolve("loop/backing_file");
        if (Files.exists(backing) && Files.readString(backing).strip().equals(image.toString())) {
          Files.writeString(
              Path.of("/sys/fs/ext4", String.valueOf(loop.getFileName()), "trigger_fs_error"),
              "1",
              StandardCharsets.US_ASCII);
          return;
        }
      }
    }
    throw new AssertionError("no loop device holds " + image);
  }

  private static boolean isLoop(Path device) {
    return String.valueOf(device.getFileName()).startsWith("loop");
  }

  private static void repair(Path image) throws Exception {
    // 1: errors were found and mended (fsck(8)).
    int code = Namespace.code(List.of("e2fsck", "-f", "-y", image.toString()));
    if (code > 1) {
      throw new AssertionError("e2fsck ended with " + code);
    }
  }

  private static void run(String... command) throws Exception {
    if (Namespace.code(List.of(command)) != 0) {
      throw new AssertionError(String.join(" ", command) + " failed");
    }
  }
}
