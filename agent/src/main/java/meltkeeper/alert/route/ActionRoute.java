package meltkeeper.alert.route;

import java.util.Optional;

/** Does what the owner wants done at a stall. */
final class ActionRoute implements Route {

  private final JamAction action;
  private final Optional<Publishing> broker;
  private final Sending sending;

  ActionRoute(JamAction action, Optional<Publishing> broker, Sending sending) {
    this.action = action;
    this.broker = broker;
    this.sending = sending;
  }

  @Override
  public void deliver(Message message) throws UndeliveredException, InterruptedException {
    String printer = message.alert().subject().printerName().orElse("");
    if (!action.lines().isEmpty() && sending.reaches(printer)) {
      sending.send(printer, action.lines());
    } else if (action.message().isPresent() && broker.isPresent()) {
      JamAction.Note note = action.message().get();
      broker
          .get()
          .publish(
              note.topic().replace(JamAction.PRINTER, printer),
              note.payload().replace(JamAction.PRINTER, printer),
              false);
    } else {
      throw UndeliveredException.forGood("the jam action has no way to " + printer);
    }
  }

  @Override
  public void close() {
    broker.ifPresent(Publishing::close);
  }
}
