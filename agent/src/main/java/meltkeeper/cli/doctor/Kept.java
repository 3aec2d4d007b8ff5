package meltkeeper.cli.doctor;

import java.io.IOException;
import java.nio.file.Files;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import meltkeeper.config.Settings;
import meltkeeper.store.Store;
import meltkeeper.store.StoreException;
import meltkeeper.store.sql.Stores;

/**
 * What the store tells, read and let go of before anybody is listened to.
 *
 * @param agentRuns true when an agent writes to the store
 * @param lastHeard when the store last heard of each printer
 * @param finding how the store itself is
 */
public record Kept(boolean agentRuns, Map<String, Instant> lastHeard, Finding finding) {

  public Kept {
    lastHeard = Map.copyOf(lastHeard);
  }

  /** Reads it; a store that cannot be opened is a finding. */
  public static Kept of(Settings settings) {
    String about = "store " + settings.storeFile();
    if (!Files.exists(settings.storeFile())) {
      return new Kept(false, Map.of(), Finding.well(about, "not there yet; a start makes it"));
    }
    try (Store store = Stores.open(settings.storeUrl())) {
      String holds =
          "%d KB, %d parts, %d hot ends"
              .formatted(
                  Files.size(settings.storeFile()) >> 10,
                  store.parts().size(),
                  store.accounts().size());
      return new Kept(isClaimed(store), lastHeard(store), Finding.well(about, holds));
    } catch (StoreException | IOException e) {
      return new Kept(
          false,
          Map.of(),
          Finding.bad(about, String.valueOf(e.getMessage()), "docs/store.md tells how"));
    }
  }

  private static Map<String, Instant> lastHeard(Store store) {
    Map<String, Instant> lastHeard = new HashMap<>();
    store
        .accounts()
        .forEach(
            account ->
                account
                    .lastArrivalNanos()
                    .ifPresent(
                        nanos ->
                            lastHeard.merge(
                                account.hotEnd().printer(),
                                Instant.ofEpochSecond(0, nanos),
                                (a, b) -> a.isAfter(b) ? a : b)));
    return lastHeard;
  }

  private static boolean isClaimed(Store store) {
    try {
      store.claim();
      return false;
    } catch (StoreException e) {
      return true;
    }
  }
}
