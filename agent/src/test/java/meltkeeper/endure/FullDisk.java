package meltkeeper.endure;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Random;

/**
 * The disk of the store fills up, and has room again. The agent has its state on a small file
 * system in a mount namespace of its own, which needs no privilege where the system grants user
 * namespaces.
 */
public final class FullDisk extends BrokerOrdeal {

  private static final int SIZE_BYTES = 3 << 20;

  public FullDisk() {
    super("disk full, and free again", 50);
  }

  @Override
  AgentProcess agent(RampShop shop) throws Exception {
    return shop.agent(
        Namespace.command(
            List.of("--mount"),
            "mount -t tmpfs -o size=%d none '%s'".formatted(SIZE_BYTES, shop.state())));
  }

  @Override
  Books once(RampShop shop, AgentProcess agent, Random random) throws Exception {
    Path state = Path.of("/proc/" + agent.pid() + "/root" + shop.state());
    Path store = Files.createDirectories(shop.state().resolve("seen")).resolve("shop.db");
    untilCredited(shop, state, store);
    Path filler = state.resolve("filler");
    fill(filler);
    shop.publish(1 + random.nextInt(SOME));
    RampShop.until("unwell", () -> agent.get("/healthz").contains("the disk is full"));
    measured(agent, "meltkeeper_store_up 0");
    shop.publish(1 + random.nextInt(SOME));
    Files.delete(filler);
    Books books = untilCredited(shop, state, store);
    measured(agent, "meltkeeper_store_up 1");
    return books;
  }

  /**
   * Waits as {@link RampShop#untilCredited()} does, on copies: SQLite follows the name of the root
   * of another process back to our own. A copy taken amid a commit is no store, or not yet right.
   */
  private static Books untilCredited(RampShop shop, Path state, Path copy) {
    RampShop.until(
        "everything is credited",
        () -> {
          for (String end : List.of("", "-wal")) {
            Files.copy(
                state.resolve("shop.db" + end),
                copy.resolveSibling("shop.db" + end),
                StandardCopyOption.REPLACE_EXISTING);
          }
          Files.deleteIfExists(copy.resolveSibling("shop.db-shm"));
          return Books.of(copy, shop.ramp()).untilNanos() == Ramp.nanos(shop.published() - 1);
        });
    return Books.of(copy, shop.ramp());
  }

  private static void fill(Path filler) throws IOException {
    byte[] block = new byte[512];
    try (OutputStream out = Files.newOutputStream(filler)) {
      for (int written = 0; written < 2 * SIZE_BYTES; written += block.length) {
        out.write(block);
      }
    } catch (IOException e) {
      return;
    }
    throw new AssertionError("the disk does not fill");
  }

  @Override
  String seen(AgentProcess agent) throws Exception {
    return logged(agent, "the disk is full")
        + ", `store_up` 0, `/healthz` 503; then "
        + logged(agent, "written again, nothing was lost");
  }
}
