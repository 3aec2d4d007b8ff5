package meltkeeper.source;

import meltkeeper.protocol.Received;

/** Takes over what a source received. Each source calls it from one thread at a time. */
@FunctionalInterface
public interface Inlet {

  /**
   * Takes one message or line over. Blocks while the one who must read it cannot keep up: that is
   * how a source is slowed down.
   *
   * @throws InterruptedException when the source is being closed meanwhile; nothing was taken
   */
  void accept(Received received) throws InterruptedException;
}
