package meltkeeper.store;

final class MemoryOutboxTest extends OutboxContract {

  @Override
  protected Store open() {
    return new MemoryStore();
  }
}
