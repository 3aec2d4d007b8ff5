package meltkeeper.endure;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import meltkeeper.endure.Happening.Bytes;
import meltkeeper.endure.Happening.Cut;
import meltkeeper.endure.Happening.Written;

/**
 * A disk that holds what was synced, and loses power at will: what was written to a file after its
 * last sync then stays, is lost, or is torn at a border of 512 bytes, each by chance and in any
 * combination.
 */
final class Disk {

  private static final int SECTOR = 512;

  /** What is on the disk for sure. */
  private final Map<String, byte[]> held = new HashMap<>();

  /** What is not yet, in order. */
  private final Map<String, List<Happening>> loose = new HashMap<>();

  /** Names that were removed since anything was synced. */
  private final Set<String> removed = new HashSet<>();

  private final boolean heedsSyncs;

  /**
   * An empty one.
   *
   * @param heedsSyncs false for a disk that lies about them
   */
  Disk(boolean heedsSyncs) {
    this.heedsSyncs = heedsSyncs;
  }

  void take(Happening happening) {
    if (happening instanceof Written written) {
      loose.computeIfAbsent(written.file(), f -> new ArrayList<>()).add(written);
    } else if (happening instanceof Cut cut) {
      loose.computeIfAbsent(cut.file(), f -> new ArrayList<>()).add(cut);
    } else if (happening instanceof Happening.Removed gone) {
      removed.add(gone.file());
      loose.remove(gone.file());
    } else if (happening instanceof Happening.Synced synced && heedsSyncs) {
      byte[] image = held.getOrDefault(synced.file(), new byte[0]);
      for (Happening waiting : loose.getOrDefault(synced.file(), List.of())) {
        image = whole(image, waiting);
      }
      held.put(synced.file(), image);
      loose.remove(synced.file());
      // A journalling file system puts names on the disk in order, with the next sync of any file.
      removed.forEach(held::remove);
      removed.clear();
    }
  }

  /** Writes into a folder what is found there after the power fails now. */
  void failInto(Path folder, Random random) throws IOException {
    Map<String, byte[]> found = new HashMap<>(held);
    removed.stream().filter(name -> random.nextBoolean()).forEach(found::remove);
    for (Map.Entry<String, List<Happening>> file : loose.entrySet()) {
      byte[] image = held.getOrDefault(file.getKey(), new byte[0]);
      Fate fate = Fate.values()[random.nextInt(Fate.values().length)];
      int reached = random.nextInt(file.getValue().size() + 1);
      for (int i = 0; i < file.getValue().size(); i++) {
        Happening waiting = file.getValue().get(i);
        image =
            switch (fate) {
              case ALL_LOST -> image;
              case ALL_KEPT -> whole(image, waiting);
              case IN_ORDER ->
                  i < reached
                      ? whole(image, waiting)
                      : i == reached ? torn(image, waiting, random, true) : image;
              case SOME_WRITES -> random.nextBoolean() ? whole(image, waiting) : image;
              case SOME_SECTORS -> torn(image, waiting, random, false);
            };
      }
      found.put(file.getKey(), image);
    }
    for (Map.Entry<String, byte[]> file : found.entrySet()) {
      Files.write(folder.resolve(file.getKey()), file.getValue());
    }
  }

  /** What becomes of the writes of a file that were not synced. */
  private enum Fate {
    ALL_LOST,
    ALL_KEPT,
    IN_ORDER,
    SOME_WRITES,
    SOME_SECTORS
  }

  private static byte[] whole(byte[] image, Happening happening) {
    if (happening instanceof Written written) {
      byte[] longer = longEnough(image, written.offset() + written.bytes().length());
      written.bytes().copy(0, written.bytes().length(), longer, written.offset());
      return longer;
    }
    return happening instanceof Cut cut ? Arrays.copyOf(image, cut.length()) : image;
  }

  /** Some sectors of a write, or the first ones of it. */
  private static byte[] torn(byte[] image, Happening happening, Random random, boolean firstOnes) {
    if (!(happening instanceof Written written)) {
      return random.nextBoolean() ? whole(image, happening) : image;
    }
    Bytes bytes = written.bytes();
    byte[] result = image;
    int reached = random.nextInt(bytes.length() + 1);
    for (int from = 0; from < bytes.length(); from += SECTOR) {
      int count = Math.min(SECTOR, bytes.length() - from);
      if (firstOnes ? from + count <= reached : random.nextBoolean()) {
        result = longEnough(result, written.offset() + from + count);
        bytes.copy(from, count, result, written.offset() + from);
      }
    }
    return result;
  }

  private static byte[] longEnough(byte[] image, int length) {
    return image.length < length ? Arrays.copyOf(image, length) : image.clone();
  }
}
