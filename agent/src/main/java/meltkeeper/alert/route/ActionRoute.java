package meltkeeper.alert.route;

/** Publishes what the owner wants done at a stall. */
final class ActionRoute implements Route {

  private final JamAction action;
  private final Publishing broker;

  ActionRoute(JamAction action, Publishing broker) {
    this.action = action;
    this.broker = broker;
  }

  @Override
  public void deliver(Message message) throws UndeliveredException, InterruptedException {
    String printer = message.alert().subject().printerName().orElse("");
    broker.publish(
        action.topic().replace(JamAction.PRINTER, printer),
        action.payload().replace(JamAction.PRINTER, printer),
        false);
  }

  @Override
  public void close() {
    broker.close();
  }
}
