package meltkeeper.cli.calls;

import java.time.ZoneId;
import java.util.List;
import java.util.OptionalLong;
import java.util.function.Function;
import java.util.function.Supplier;
import meltkeeper.outlook.OutlookDesk;
import meltkeeper.pipeline.Live;
import meltkeeper.protocol.Arrival;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Episodes;
import meltkeeper.store.Outbox;
import meltkeeper.store.Posting;

/** All calls that need an outlook, and the look at the disk. For one thread. */
public final class OutlookCalls {

  private final OutlookDesk desk;
  private final Supplier<Live> live;
  private final Outbox outbox;
  private final Episodes episodes;
  private final DueCalls due;
  private final BatchCalls batches;
  private final DiskCalls disk;

  /**
   * @param routes the names of those that want a topic
   * @param freeBytes on the disk of the store; empty where nobody can tell
   * @param zone in which dates are told
   */
  public OutlookCalls(
      OutlookDesk desk,
      Supplier<Live> live,
      Outbox outbox,
      Function<AlertTopic, List<String>> routes,
      BatchLimits limits,
      Supplier<OptionalLong> freeBytes,
      ZoneId zone) {
    this.desk = desk;
    this.live = live;
    this.outbox = outbox;
    this.episodes = new Episodes(routes, outbox.open());
    this.due = new DueCalls(episodes, outbox.open(), zone);
    this.batches = new BatchCalls(desk, limits, episodes);
    this.disk = new DiskCalls(freeBytes, episodes);
  }

  /**
   * Looks at what lies ahead, and at what runs.
   *
   * @throws meltkeeper.store.StoreException when the calls cannot be kept; the next look tries
   *     again
   */
  void look(Arrival now) {
    due.look(DueCalls.Ahead.of(desk.latest()), now.wallNanos());
    batches.look(live.get().hotEnds(), now);
    disk.look(now.steadyNanos());
    List<Posting> pending = episodes.pending();
    if (!pending.isEmpty()) {
      outbox.post(pending);
      episodes.posted();
    }
  }
}
