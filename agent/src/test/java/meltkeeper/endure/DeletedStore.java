package meltkeeper.endure;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;

/** Somebody deletes the store's files, some or all of them, while the agent runs. */
public final class DeletedStore extends BrokerOrdeal {

  private static final List<String> ENDS = List.of("", "-wal", "-shm", ".lock");

  public DeletedStore() {
    super("store deleted while the agent runs: any of its files", 100);
  }

  @Override
  Books once(RampShop shop, AgentProcess agent, Random random) throws Exception {
    shop.untilCredited();
    int which = 1 + random.nextInt((1 << ENDS.size()) - 1);
    for (int i = 0; i < ENDS.size(); i++) {
      if ((which >> i & 1) == 1) {
        Path file = shop.state().resolve("shop.db" + ENDS.get(i));
        Files.deleteIfExists(file);
      }
    }
    shop.publish(SOME);
    RampShop.until("it is there again", () -> Files.exists(shop.store()));
    return shop.untilCredited();
  }

  @Override
  String seen(AgentProcess agent) throws Exception {
    return logged(agent, "all that it held was written anew");
  }
}
