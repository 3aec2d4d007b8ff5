package meltkeeper.source;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.random.RandomGenerator;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The tries of one source to reach its other side, for ever: how long to wait before the next, and
 * one line in the log for each trouble, however many tries it lasts. For one thread.
 */
public final class Retries {

  private static final Logger LOG = LoggerFactory.getLogger(Retries.class);

  private final String who;
  private final Backoff backoff;
  private Duration pause = Duration.ZERO;
  private Optional<String> known = Optional.empty();

  /**
   * @param who the source, as a log should call it
   */
  public Retries(String who, Duration firstPause, Duration longestPause) {
    this.who = who;
    this.backoff = new Backoff(firstPause, longestPause, RandomGenerator.getDefault());
  }

  /** Takes note of a failure, and says how the source is until the next try. */
  public SourceState failed(String reason) {
    pause = backoff.next();
    if (known.filter(reason::equals).isEmpty()) {
      LOG.warn("{}: {}; trying again until it works", who, reason);
    } else {
      LOG.debug("{}: still {}", who, reason);
    }
    known = Optional.of(reason);
    return SourceState.down(reason + "; next try in " + pause.toMillis() + " ms");
  }

  /** Waits until the next try is due. */
  public void pause() throws InterruptedException {
    TimeUnit.NANOSECONDS.sleep(pause.toNanos());
  }

  /** Takes note of success, and says how the source is now. */
  public SourceState succeeded(String words) {
    LOG.info("{}: {}", who, words);
    known = Optional.empty();
    return SourceState.up(words);
  }

  /** Lets the pauses begin anew, since all went well for a while. */
  public void settled() {
    backoff.reset();
  }
}
