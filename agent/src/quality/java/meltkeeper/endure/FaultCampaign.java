package meltkeeper.endure;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.opentest4j.TestAbortedException;

/**
 * Tries every fault as often as its first argument says, from the seed that is its second, and
 * prints the table that docs/reliability.md quotes. Names of ordeals after them choose some only.
 */
public final class FaultCampaign {

  private FaultCampaign() {}

  public static void main(String[] arguments) throws Exception {
    int times = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 1000;
    long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 20260302L;
    List<String> chosen =
        arguments.length > 2 ? List.of(arguments).subList(2, arguments.length) : List.of();
    System.out.println("Seed " + seed + ".\n\n" + Tried.HEAD);
    for (Ordeal ordeal : Ordeals.all()) {
      if (chosen.isEmpty() || chosen.contains(ordeal.getClass().getSimpleName())) {
        print(ordeal, times, seed);
      }
    }
  }

  private static void print(Ordeal ordeal, int times, long seed) throws Exception {
    Path folder = Files.createTempDirectory("ordeal");
    try {
      System.out.println(ordeal.endure(times, seed, folder).row());
    } catch (TestAbortedException e) {
      System.out.printf("| %s | 0 | | | not tried here: %s |%n", ordeal.fault(), e.getMessage());
    } finally {
      remove(folder);
    }
  }

  private static void remove(Path folder) throws Exception {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }
}
