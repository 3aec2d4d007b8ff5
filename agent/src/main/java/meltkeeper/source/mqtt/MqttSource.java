package meltkeeper.source.mqtt;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Received;
import meltkeeper.source.Inlet;
import meltkeeper.source.Retries;
import meltkeeper.source.Source;
import meltkeeper.source.SourceState;
import meltkeeper.source.SteadyClock;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One broker, listened to at QoS 1 in a session that the broker keeps, so that a short absence
 * loses nothing that was published at QoS 1.
 *
 * <p>A message is acknowledged only after the inlet took it. While the inlet blocks, nothing more
 * is read from the broker, which then holds messages back: at QoS 1 to its own limits, at QoS 0 it
 * may drop them. An inlet that takes nothing for longer than the keep-alive (30 s) costs the
 * connection, because its pings go unanswered; the next one brings again whatever was not
 * acknowledged. So messages can come twice, but never go missing between the broker and the inlet.
 *
 * <p>The library's own reconnecting is left off: it does not begin while the broker is down at the
 * start, and stops after some refusals. Here one thread makes a new connection after each failure,
 * of whatever kind, with growing pauses, for ever.
 */
public final class MqttSource implements Source {

  private static final Logger LOG = LoggerFactory.getLogger(MqttSource.class);

  /** The library logs what it tells us anyway, to a place where nobody wants it. */
  private static final java.util.logging.Logger LIBRARY_LOG =
      java.util.logging.Logger.getLogger("org.eclipse.paho");

  static {
    LIBRARY_LOG.setLevel(java.util.logging.Level.OFF);
  }

  private final BrokerSettings broker;
  private final Session session;
  private final List<String> filters;
  private final SteadyClock clock;
  private final Timing timing;
  private final Retries retries;
  private final Object lifecycle = new Object();
  private @Nullable Thread thread;
  private @Nullable Delivery delivery;
  private volatile boolean closed;
  private volatile SourceState state = SourceState.down("not started");

  /**
   * @param filters topic filters as in MQTT 5.0, 4.7; each is subscribed once
   */
  public MqttSource(
      BrokerSettings broker, Session session, Collection<String> filters, SteadyClock clock) {
    this(broker, session, filters, clock, Timing.USUAL);
  }

  MqttSource(
      BrokerSettings broker,
      Session session,
      Collection<String> filters,
      SteadyClock clock,
      Timing timing) {
    this.broker = broker;
    this.session = session;
    this.filters = List.copyOf(new LinkedHashSet<>(filters));
    this.clock = clock;
    this.timing = timing;
    this.retries =
        new Retries("broker " + broker.name(), timing.firstPause(), timing.longestPause());
  }

  @Override
  public String name() {
    return broker.name();
  }

  @Override
  public SourceState state() {
    return state;
  }

  @Override
  public void start(Inlet inlet) {
    listen(
        request ->
            inlet.accept(
                new Received(
                    new Origin.Topic(broker.name(), request.topic()),
                    request.payload(),
                    clock.now(),
                    request.retained())));
  }

  /** Starts for one that wants to answer, too. */
  public void listen(MqttRequest.Taker taker) {
    synchronized (lifecycle) {
      if (thread != null || closed) {
        throw new IllegalStateException("broker " + broker.name() + " was started before");
      }
      thread = new Thread(() -> keepConnected(taker), "broker " + broker.name());
      thread.start();
    }
  }

  @Override
  public void close() {
    Thread running;
    synchronized (lifecycle) {
      closed = true;
      running = thread;
      if (delivery != null) {
        delivery.abandon();
      }
    }
    if (running != null) {
      running.interrupt();
      join(running);
    }
    state = SourceState.down("closed");
  }

  private void keepConnected(MqttRequest.Taker taker) {
    while (!closed) {
      String reason;
      try {
        reason = connectAndStay(taker);
      } catch (LinkException e) {
        reason = String.valueOf(e.getMessage());
      } catch (InterruptedException e) {
        reason = "closed";
      } catch (RuntimeException e) {
        LOG.error("broker {}: a bug of ours, or of the MQTT library", broker.name(), e);
        reason = "bug: " + e;
      }
      if (!closed) {
        pause(reason);
      }
    }
  }

  private String connectAndStay(MqttRequest.Taker taker)
      throws LinkException, InterruptedException {
    state = SourceState.connecting("to " + broker.url());
    Link link = newLink(taker);
    try {
      link.open();
      state = retries.succeeded("connected to " + broker.url());
      return stay(link);
    } finally {
      link.close();
    }
  }

  private String stay(Link link) throws InterruptedException {
    long begin = System.nanoTime();
    Optional<String> reason = Optional.empty();
    while (reason.isEmpty()) {
      try {
        reason = Optional.of(link.lost().get(1, TimeUnit.SECONDS));
      } catch (TimeoutException e) {
        // The library has been seen to lose a connection without telling.
        reason = link.isUp() ? Optional.empty() : Optional.of("the connection is gone");
      } catch (ExecutionException e) {
        throw new IllegalStateException("bug: a loss never fails", e);
      }
    }
    if (System.nanoTime() - begin >= timing.settled().toNanos()) {
      retries.settled();
    }
    return reason.get();
  }

  private Link newLink(MqttRequest.Taker taker) throws LinkException {
    return Links.to(
        broker,
        broker.clientId().orElse(session.clientId()),
        session.keptFor(),
        filters,
        newDelivery(taker),
        timing);
  }

  private Delivery newDelivery(MqttRequest.Taker taker) {
    Delivery made = new Delivery(broker.name(), taker);
    synchronized (lifecycle) {
      delivery = made;
      if (closed) {
        made.abandon();
      }
    }
    return made;
  }

  private void pause(String reason) {
    state = retries.failed(reason);
    try {
      retries.pause();
    } catch (InterruptedException e) {
      LOG.debug("broker {}: closed while waiting", broker.name());
    }
  }

  private static void join(Thread running) {
    try {
      running.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
