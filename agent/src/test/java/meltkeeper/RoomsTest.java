package meltkeeper;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.belongToAnyOf;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Who may import whom. The list is the house's plan; {@code DEVELOPERS.md} draws it. */
class RoomsTest {

  private static final JavaClasses ALL =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("meltkeeper");

  /** Room, then the rooms that it may import. Every room may import what is below protocol. */
  private static final Map<String, List<String>> MAY_IMPORT =
      Map.ofEntries(
          Map.entry("protocol", List.of()),
          Map.entry("part", List.of("protocol")),
          Map.entry("ledger", List.of("protocol", "part")),
          Map.entry("caution", List.of("protocol", "part")),
          Map.entry("life", List.of("protocol", "part")),
          Map.entry("jam", List.of("protocol")),
          Map.entry("plot", List.of()),
          Map.entry("proposal", List.of("protocol")),
          Map.entry("store", List.of("protocol", "part", "ledger", "jam")),
          Map.entry("trust", List.of()),
          Map.entry("source", List.of("protocol", "trust")),
          Map.entry("pipeline", List.of("protocol", "part", "ledger", "caution", "jam", "store")),
          Map.entry("alert", List.of("protocol", "part", "store", "trust")),
          Map.entry("desk", List.of("protocol", "part", "ledger", "store")),
          Map.entry("outlook", List.of("protocol", "part", "ledger", "life", "store", "desk")),
          Map.entry("metrics", List.of("protocol", "part", "ledger", "jam", "pipeline", "desk")),
          Map.entry(
              "web",
              List.of(
                  "protocol",
                  "part",
                  "ledger",
                  "jam",
                  "pipeline",
                  "desk",
                  "metrics",
                  "life",
                  "outlook",
                  "plot",
                  "alert",
                  "store")),
          Map.entry(
              "config",
              List.of("protocol", "part", "ledger", "source", "store", "alert", "metrics", "web")),
          Map.entry("demo", List.of("protocol", "config")));

  private static final List<String> PURE =
      List.of("protocol", "part", "ledger", "caution", "jam", "life", "plot", "proposal");

  @TestFactory
  Stream<DynamicTest> room_importsOnly_whatItsSignAllows() {
    return MAY_IMPORT.entrySet().stream()
        .map(
            entry ->
                DynamicTest.dynamicTest(
                    entry.getKey(), () -> checkImports(entry.getKey(), entry.getValue())));
  }

  private static void checkImports(String room, List<String> allowed) {
    String[] open =
        Stream.concat(Stream.of(room), allowed.stream())
            .map(r -> "meltkeeper." + r + "..")
            .toArray(String[]::new);
    noClasses()
        .that()
        .resideInAPackage("meltkeeper." + room + "..")
        .should()
        .dependOnClassesThat(resideInAPackage("meltkeeper..").and(not(resideInAnyPackage(open))))
        .because(room + " may import " + allowed)
        .allowEmptyShould(true)
        .check(ALL);
  }

  @TestFactory
  Stream<DynamicTest> pureRoom_knowsNoFilesThreadsClocksOrLogs() {
    return PURE.stream().map(room -> DynamicTest.dynamicTest(room, () -> checkPure(room)));
  }

  private static void checkPure(String room) {
    noClasses()
        .that()
        .resideInAPackage("meltkeeper." + room + "..")
        .should()
        .dependOnClassesThat(
            resideInAnyPackage(
                    "java.nio.file..",
                    "java.net..",
                    "java.sql..",
                    "java.util.concurrent..",
                    "org.slf4j..")
                .or(
                    belongToAnyOf(
                        Thread.class,
                        java.time.Clock.class,
                        java.io.File.class,
                        java.io.FileInputStream.class,
                        java.io.FileOutputStream.class,
                        java.io.PrintStream.class)))
        .orShould()
        .callMethod(System.class, "nanoTime")
        .orShould()
        .callMethod(System.class, "currentTimeMillis")
        .orShould()
        .callMethod(java.time.Instant.class, "now")
        .allowEmptyShould(true)
        .check(ALL);
  }

  @Test
  void rooms_formNoRing() {
    slices().matching("meltkeeper.(**)").should().beFreeOfCycles().check(ALL);
  }

  @Test
  void sql_isSeenByTheCommandLineOnly() {
    noClasses()
        .that()
        .resideOutsideOfPackages("meltkeeper.cli..", "meltkeeper.store.sql..")
        .should()
        .dependOnClassesThat(resideInAPackage("meltkeeper.store.sql.."))
        .check(ALL);
  }

  @Test
  void demo_isSeenByTheCommandLineOnly() {
    noClasses()
        .that()
        .resideOutsideOfPackages("meltkeeper.cli..", "meltkeeper.demo..")
        .should()
        .dependOnClassesThat(resideInAPackage("meltkeeper.demo.."))
        .check(ALL);
  }

  @Test
  void everyRoom_hasASignAndAPlaceInThePlan() {
    List<String> rooms =
        ALL.stream()
            .map(c -> c.getPackageName().split("\\."))
            .filter(parts -> parts.length > 1)
            .map(parts -> parts[1])
            .distinct()
            .filter(room -> !room.equals("cli"))
            .toList();
    org.assertj.core.api.Assertions.assertThat(MAY_IMPORT.keySet()).containsAll(rooms);
    org.assertj.core.api.Assertions.assertThat(
            ALL.stream()
                .filter(c -> c.getSimpleName().equals("package-info"))
                .map(c -> c.getPackageName())
                .toList())
        .containsAll(
            Arrays.asList(
                ALL.stream().map(c -> c.getPackageName()).distinct().toArray(String[]::new)));
  }
}
