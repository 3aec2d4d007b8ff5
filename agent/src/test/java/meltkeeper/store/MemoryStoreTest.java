package meltkeeper.store;

final class MemoryStoreTest extends StoreContract {

  @Override
  protected Store open() {
    return new MemoryStore();
  }
}
