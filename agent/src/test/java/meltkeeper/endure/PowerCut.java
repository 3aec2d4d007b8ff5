package meltkeeper.endure;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import meltkeeper.endure.Happening.Promised;
import meltkeeper.store.StoreException;
import meltkeeper.testing.RunningProgram;

/**
 * The power fails as a file system sees it. A process that credits is watched by {@code strace};
 * its writes are then played onto a disk that forgets or tears whatever was not synced, at a random
 * moment, and the store is opened on what is left.
 */
public final class PowerCut implements Ordeal {

  /** Enough for the log to be written back into the database more than once. */
  private static final int COMMITS = 600;

  private final boolean diskHeedsSyncs;

  /** On a disk that heeds what it is told. */
  public PowerCut() {
    this(true);
  }

  /** Also on a disk that says it has synced and has not, on which promises must break. */
  PowerCut(boolean diskHeedsSyncs) {
    this.diskHeedsSyncs = diskHeedsSyncs;
  }

  @Override
  public String fault() {
    return "power cut: writes after the last sync dropped, torn or reordered";
  }

  @Override
  public int few() {
    return 60;
  }

  @Override
  public Tried endure(int times, long seed, Path folder) throws Exception {
    Path state = Files.createDirectories(folder.resolve("state")).toRealPath();
    List<Happening> happenings = happenings(folder, state);
    Random random = new Random(seed);
    int[] cuts =
        IntStream.generate(() -> random.nextInt(happenings.size())).limit(times).sorted().toArray();
    Disk disk = new Disk(diskHeedsSyncs);
    long promised = Ramp.BEGAN_NANOS;
    long lost = 0;
    long doubled = 0;
    int next = 0;
    for (int cut : cuts) {
      for (; next < cut; next++) {
        disk.take(happenings.get(next));
        promised = happenings.get(next) instanceof Promised said ? said.untilNanos() : promised;
      }
      Path found = Files.createDirectory(folder.resolve("found"));
      disk.failInto(found, random);
      Books books = opened(found.resolve("shop.db"));
      lost += books.lostNanos() + Math.max(0, promised - books.untilNanos());
      doubled += books.doubledNanos();
      remove(found);
    }
    return new Tried(fault(), times, lost, doubled, "nothing; the next start goes on");
  }

  private static List<Happening> happenings(Path folder, Path state) throws Exception {
    Path trace = folder.resolve("trace");
    List<String> command = new ArrayList<>(Traced.command(trace));
    command.addAll(
        Start.USUAL.java(
            StoreProgram.class.getName(), state.resolve("shop.db").toString(), "" + COMMITS));
    try (RunningProgram program = RunningProgram.start(folder.resolve("out"), command)) {
      RampShop.until("it has ended", () -> !program.isRunning());
    }
    List<Happening> happenings = Traced.read(trace, state);
    long promises = happenings.stream().filter(Promised.class::isInstance).count();
    if (promises != COMMITS) {
      throw new AssertionError(promises + " promises\n" + Files.readString(folder.resolve("out")));
    }
    return happenings;
  }

  /** A store that does not even open has lost everything. */
  private Books opened(Path file) throws SQLException {
    try {
      Books books = Books.of(file, StoreProgram.RAMP);
      if (!isWhole(file)) {
        throw new AssertionError("the file is damaged: " + file);
      }
      return books;
    } catch (StoreException | AssertionError e) {
      if (diskHeedsSyncs) {
        throw e;
      }
      return new Books(Ramp.BEGAN_NANOS, 0, 0, 0);
    }
  }

  private static boolean isWhole(Path file) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        ResultSet row = connection.createStatement().executeQuery("PRAGMA integrity_check")) {
      return row.next() && row.getString(1).equals("ok");
    }
  }

  private static void remove(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }
}
