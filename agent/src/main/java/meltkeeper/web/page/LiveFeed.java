package meltkeeper.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.sse.SseClient;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import meltkeeper.pipeline.Live;
import meltkeeper.web.view.AgentView;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Tells open pages that something changed, by server-sent events; each then asks for what it shows.
 * At most {@value #MOST} pages at once; one more has to look again by hand.
 */
final class LiveFeed implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(LiveFeed.class);
  private static final int MOST = 100;
  private static final int BEAT_TICKS = 10;

  /** A browser hands no event on that bears no data (HTML Living Standard, 9.2.6). */
  private static final String SOMETHING = "-";

  private final AgentView agent;
  private final Set<SseClient> clients = ConcurrentHashMap.newKeySet();
  private final ScheduledExecutorService thread =
      Executors.newSingleThreadScheduledExecutor(
          task -> {
            Thread made = new Thread(task, "live-feed");
            made.setDaemon(true);
            return made;
          });
  private Live told = Live.EMPTY;
  private int ticks;

  LiveFeed(AgentView agent) {
    this.agent = agent;
    var unused = thread.scheduleWithFixedDelay(this::tick, 2, 2, TimeUnit.SECONDS);
  }

  void serve(RoutesConfig routes) {
    routes.sse(
        "/live",
        client -> {
          if (clients.size() >= MOST) {
            client.ctx().status(503);
            client.close();
            return;
          }
          client.keepAlive();
          client.onClose(() -> clients.remove(client));
          clients.add(client);
          client.sendEvent("hello", SOMETHING);
        });
  }

  private void tick() {
    try {
      Live now = agent.live();
      boolean changed =
          !now.hotEnds().equals(told.hotEnds()) || !now.trouble().equals(told.trouble());
      told = now;
      ticks++;
      if (changed || ticks % BEAT_TICKS == 0) {
        clients.forEach(client -> tell(client, changed));
      }
    } catch (RuntimeException e) {
      LOG.warn("open pages were not told of a change", e);
    }
  }

  private void tell(SseClient client, boolean changed) {
    if (client.terminated()) {
      clients.remove(client);
    } else if (changed) {
      client.sendEvent("changed", SOMETHING);
    } else {
      client.sendComment("still here");
    }
  }

  @Override
  public void close() {
    thread.shutdownNow();
    clients.forEach(SseClient::close);
    clients.clear();
  }
}
