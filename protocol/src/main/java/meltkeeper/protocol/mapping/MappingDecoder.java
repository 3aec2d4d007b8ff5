package meltkeeper.protocol.mapping;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import meltkeeper.protocol.Decoder;
import meltkeeper.protocol.Fault;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Outlet;
import meltkeeper.protocol.Received;
import meltkeeper.protocol.Rejected;
import meltkeeper.protocol.Rejected.Reason;

/**
 * Turns the messages of one broker into readings, by the mappings of its printers.
 *
 * <p>A message's readings come in the order of {@link meltkeeper.protocol.Signal}, each hot end's
 * with one sample. A message that is torn, too long, or without the time that is mapped tells
 * nothing but the reason; a single value that is wrong is refused alone. A field that is missing or
 * null is neither told nor refused. Of a key that an object holds twice, the last one counts.
 *
 * <p>Topics are matched once: what to do with each is kept for the {@value #KEPT_TOPICS} used last.
 * Not safe for use by several threads. Never throws for bad bytes.
 */
public final class MappingDecoder implements Decoder {

  /** The longest payload that is read unless told otherwise, in bytes. */
  public static final int MAX_PAYLOAD_BYTES = 256_000;

  private static final int KEPT_TOPICS = 4_096;

  private final int maxPayloadBytes;
  private final Router router;
  private final Set<String> subscriptions;
  private final Map<String, Router.Way> ways = new LastUsed<>(KEPT_TOPICS);

  /** A decoder of payloads up to {@link #MAX_PAYLOAD_BYTES}. */
  public MappingDecoder(List<Route> routes) {
    this(routes, MAX_PAYLOAD_BYTES);
  }

  /**
   * A decoder.
   *
   * @param routes the mappings in use at the broker, each with its printers
   * @param maxPayloadBytes the longest payload that is read, at least 1
   */
  public MappingDecoder(List<Route> routes, int maxPayloadBytes) {
    if (maxPayloadBytes < 1) {
      throw new IllegalArgumentException(
          "a payload limit of " + maxPayloadBytes + " bytes is not at least 1");
    }
    this.maxPayloadBytes = maxPayloadBytes;
    this.router = new Router(routes, JsonDialect.factory(maxPayloadBytes));
    Set<String> filters = new LinkedHashSet<>();
    for (Route route : routes) {
      route.mapping().rules().forEach(rule -> filters.add(rule.topic().subscription()));
    }
    this.subscriptions = Collections.unmodifiableSet(filters);
  }

  /** The topic filters to subscribe to at the broker, in the order of the mappings. */
  public Set<String> subscriptions() {
    return subscriptions;
  }

  @Override
  public void decode(Received received, Outlet outlet) {
    if (received.origin() instanceof Origin.Topic origin) {
      decode(origin, received, outlet);
    } else {
      Fault fault = Fault.of("", received.payload().text(), "a broker's message");
      String text = fault.at(received.origin().describe()).toString();
      outlet.rejected(new Rejected(Reason.UNKNOWN_LINE, text));
    }
  }

  private void decode(Origin.Topic origin, Received received, Outlet outlet) {
    Router.Way way = ways.get(origin.topic());
    if (way == null) {
      way = router.way(origin.topic());
      ways.put(origin.topic(), way);
    }
    if (way.refusal().isPresent()) {
      outlet.rejected(way.refusal().get().at(origin.describe()));
    } else if (received.payload().length() > maxPayloadBytes) {
      String found = received.payload().length() + " bytes";
      Fault fault = Fault.of("payload", found, "at most " + maxPayloadBytes + " bytes");
      outlet.rejected(new Rejected(Reason.TOO_LONG, fault.at(origin.describe()).toString()));
    } else {
      for (MessageReader reader : way.readers()) {
        reader.read(received, outlet);
      }
    }
  }

  /** A map that forgets what was not used for longest. */
  private static final class LastUsed<K, V> extends LinkedHashMap<K, V> {

    private static final long serialVersionUID = 1L;

    private final int limit;

    LastUsed(int limit) {
      super(16, 0.75f, true);
      this.limit = limit;
    }

    @Override
    protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
      return size() > limit;
    }
  }
}
