package meltkeeper.store.sql;

import java.nio.file.Path;
import meltkeeper.store.OutboxContract;
import meltkeeper.store.Store;
import org.junit.jupiter.api.io.TempDir;

final class SqlOutboxTest extends OutboxContract {

  @TempDir Path directory;

  @Override
  protected Store open() {
    return Stores.open("jdbc:sqlite:" + directory.resolve("contract.db"));
  }
}
