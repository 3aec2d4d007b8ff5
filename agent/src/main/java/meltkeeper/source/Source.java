package meltkeeper.source;

/**
 * One broker, printer port or recording that is listened to. It owns its threads, its retries and
 * its closing. Safe for use by several threads.
 */
public interface Source extends AutoCloseable {

  /** The name of the broker or printer in the configuration. */
  String name();

  /**
   * Begins to listen and returns at once; whatever goes wrong later is told by {@link #state}, and
   * tried again for ever. To be called once.
   */
  void start(Inlet inlet);

  /** How it is now. */
  SourceState state();

  /** Stops listening and waits until nothing more will be handed over. May be called again. */
  @Override
  void close();
}
