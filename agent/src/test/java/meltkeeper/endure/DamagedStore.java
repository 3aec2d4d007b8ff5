package meltkeeper.endure;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Random;

/**
 * The store's file is damaged while the agent is off, some pages of it or its head; a copy of the
 * evening before is then put in its place. The agent either says that it is damaged, and where, or
 * goes on because the damage does not concern it; it never makes up hours.
 */
public final class DamagedStore implements Ordeal {

  private static final int MOST = 50;
  private static final int PAGE = 4096;

  @Override
  public String fault() {
    return "store damaged while the agent is off; a copy put in its place";
  }

  @Override
  public Tried endure(int times, long seed, Path folder) throws Exception {
    int tries = Math.min(times, MOST);
    Random random = new Random(seed);
    int told = 0;
    long lost = 0;
    long doubled = 0;
    try (RampShop shop = new RampShop(folder, new Ramp(1e-4))) {
      for (int i = 0; i < tries; i++) {
        try (AgentProcess agent = shop.agent()) {
          agent.awaitReady();
          RampShop.until("it has connected", () -> agent.logged().contains("connected to"));
          shop.publish(200);
          Books books = shop.untilCredited();
          lost += books.lostNanos();
          doubled += books.doubledNanos();
          agent.end();
        }
        Path copy = folder.resolve("copy.db");
        Files.copy(shop.store(), copy, StandardCopyOption.REPLACE_EXISTING);
        damage(shop.store(), random);
        try (AgentProcess second = AgentProcess.run(shop.config(), folder.resolve("damaged.log"))) {
          told += hasTold(second) ? 1 : 0;
        }
        for (String end : List.of("-wal", "-shm")) {
          Files.deleteIfExists(shop.state().resolve("shop.db" + end));
        }
        Files.copy(copy, shop.store(), StandardCopyOption.REPLACE_EXISTING);
      }
    }
    return new Tried(
        fault(),
        tries,
        lost,
        doubled,
        "the start ends with 1: “the file is damaged; put a backup in its place” (%d of %d; else the damage was not in what a start reads)"
            .formatted(told, tries));
  }

  /** True when it ended with clear words; false when it runs, or says so on its page. */
  private static boolean hasTold(AgentProcess second) throws Exception {
    RampShop.until(
        "it runs or has ended", () -> !second.isAlive() || second.logged().contains("page on"));
    if (second.isAlive()) {
      second.kill();
      return false;
    }
    String said = second.logged();
    boolean clear =
        said.contains("the file is damaged")
            || said.contains("it is no SQLite database")
            || said.contains("belongs to another program")
            || said.contains("unreadable")
            || said.contains("its schema is version");
    if (second.exitCode() != 1 || !clear || said.contains("\tat ")) {
      throw new AssertionError("it ended with " + second.exitCode() + " and says:\n" + said);
    }
    return true;
  }

  private static void damage(Path file, Random random) throws IOException {
    try (RandomAccessFile bytes = new RandomAccessFile(file.toFile(), "rw")) {
      int pages = (int) (bytes.length() / PAGE);
      byte[] noise = new byte[PAGE];
      for (int i = random.nextInt(5); i >= 0; i--) {
        random.nextBytes(noise);
        bytes.seek((long) PAGE * random.nextInt(pages));
        bytes.write(noise);
      }
    }
  }
}
