package meltkeeper.alert;

import java.util.Optional;

/** What a route has done since the start. Safe for any thread. */
final class Count {

  private long delivered;
  private long failed;
  private long dead;
  private int waiting;
  private boolean isFull;
  private Optional<String> trouble = Optional.empty();

  /** Notes a success; true when there was trouble before. */
  synchronized boolean succeeded(int letters) {
    boolean wasInTrouble = trouble.isPresent();
    delivered += letters;
    trouble = Optional.empty();
    return wasInTrouble;
  }

  /** Notes a try that failed; true when the trouble is new. */
  synchronized boolean failed(String reason) {
    boolean isNew = !trouble.equals(Optional.of(reason));
    failed++;
    trouble = Optional.of(reason);
    return isNew;
  }

  synchronized void died(int letters) {
    dead += letters;
  }

  synchronized void waits(int letters, boolean areAllThatMay) {
    waiting = letters;
    isFull = areAllThatMay;
  }

  synchronized RouteState state(String name) {
    return new RouteState(name, delivered, failed, dead, waiting, isFull, trouble);
  }
}
