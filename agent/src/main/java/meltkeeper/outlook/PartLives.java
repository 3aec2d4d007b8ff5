package meltkeeper.outlook;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import meltkeeper.life.PartLife;
import meltkeeper.part.Part;
import meltkeeper.store.Store;

/**
 * Tells each part's life from what hot ends did and from what happened to the part. Lives that are
 * over are kept until the parts change, and a little longer: the running agent may still cut stored
 * stretches at new edges. Not for several threads at once.
 */
final class PartLives {

  private static final long SETTLED_NANOS = 120_000_000_000L;

  private final Store store;
  private final Map<String, PartLife> over = new HashMap<>();
  private long revision = Long.MIN_VALUE;
  private long revisionSeenNanos;
  private boolean settled;

  PartLives(Store store) {
    this.store = store;
  }

  /** A part and its life. */
  record Told(Part part, PartLife life) {}

  /** The parts that have something to say, by kind, each in order of ids. */
  Map<String, List<Told>> byKind(long nowNanos) {
    forgetWhatMayHaveChanged(nowNanos);
    Map<String, List<Told>> kinds = new TreeMap<>();
    for (Part part : store.parts()) {
      PartLife life = life(part);
      if (speaks(part, life)) {
        kinds.computeIfAbsent(part.kind(), k -> new ArrayList<>()).add(new Told(part, life));
      }
    }
    return kinds;
  }

  private void forgetWhatMayHaveChanged(long nowNanos) {
    long current = store.revision();
    if (current != revision) {
      revision = current;
      revisionSeenNanos = nowNanos;
      settled = false;
    }
    if (!settled) {
      over.clear();
      settled = nowNanos - revisionSeenNanos >= SETTLED_NANOS;
    }
  }

  /** A part that lies on the shelf, new, says nothing. */
  private static boolean speaks(Part part, PartLife life) {
    return life.clockHours() > 0
        || life.failures() > 0
        || life.past().isPresent()
        || part.fittedOn().isPresent();
  }

  private PartLife life(Part part) {
    return part.fittedOn().isPresent()
        ? LifeWalk.of(store, part)
        : over.computeIfAbsent(part.id(), id -> LifeWalk.of(store, part));
  }
}
