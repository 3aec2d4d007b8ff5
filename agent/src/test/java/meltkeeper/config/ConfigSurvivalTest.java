package meltkeeper.config;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import meltkeeper.protocol.Fault;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever a file holds, it gives settings or faults in the order of their lines. */
class ConfigSurvivalTest {

  private static final String SIGNS =
      "{}[]:,-#&*!|>'\"%@`?~<= \n\n\t\\/abcN10.\u0000\u0085\uFEFF\uD800\uDFFFé";

  private static final List<String> VALUES =
      List.of(
          "-1",
          "1e400",
          "NaN",
          "~",
          "''",
          "[]",
          "{}",
          "[[]]",
          "{ a: { b: c } }",
          "*x",
          "&x",
          "|",
          "tcp://",
          "ssl://[",
          "a:b:c",
          "99999999999",
          "%00",
          "\"\\0\"",
          "!x y",
          "? z",
          "2026-03-02");

  static Stream<Integer> seeds() {
    return IntStream.range(0, 300).boxed();
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void anySigns_read_giveSettingsOrFaults(int seed) {
    Random random = new Random(seed);
    StringBuilder text = new StringBuilder(random.nextBoolean() ? "printers: " : "");
    for (int i = random.nextInt(200); i >= 0; i--) {
      text.append(SIGNS.charAt(random.nextInt(SIGNS.length())));
    }

    assertTold(text.toString());
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void damagedExample_read_givesSettingsOrFaults(int seed) {
    Random random = new Random(seed);
    String text = Shop.document("example.yaml");
    for (int i = random.nextInt(4); i >= 0; i--) {
      text = damaged(text, random);
    }

    assertTold(text);
  }

  private static String damaged(String text, Random random) {
    List<String> lines = new ArrayList<>(text.lines().toList());
    int at = random.nextInt(lines.size());
    String line = lines.get(at);
    int cut = random.nextInt(line.length() + 1);
    int colon = line.indexOf(':');
    switch (random.nextInt(5)) {
      case 0 -> lines.remove(at);
      case 1 -> lines.add(at, lines.get(random.nextInt(lines.size())));
      case 2 -> lines.set(at, line.substring(0, cut));
      case 3 ->
          lines.set(
              at,
              line.substring(0, cut)
                  + SIGNS.charAt(random.nextInt(SIGNS.length()))
                  + line.substring(cut));
      default ->
          lines.set(
              at,
              line.substring(0, Math.max(colon, 0))
                  + ": "
                  + VALUES.get(random.nextInt(VALUES.size())));
    }
    return String.join("\n", lines);
  }

  @ParameterizedTest
  @ValueSource(ints = {30, 1_000, 100_000})
  void deepNesting_read_givesAFault(int depth) {
    assertTold("[".repeat(depth));
    assertTold("{a: ".repeat(depth));
    assertTold("- ".repeat(depth));
    assertTold("printers: " + "? ".repeat(depth));
    assertTold("printers: \"" + "\\".repeat(depth));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "&a [*a]",
        "&a {printers: *a}",
        "&a {*a : *a}",
        "printers: &a { heron: *a, from: *a }",
        "&a {<<: *a}",
        "mappings: &a { x: [ *a ] }\nprinters: *a"
      })
  void aliasOfItself_read_givesAFault(String text) {
    assertTold(text);
  }

  @ParameterizedTest
  @ValueSource(ints = {100, 1_000})
  void manyAliases_read_giveSettingsOrFaults(int count) {
    assertTold("kinds: &a {}\nprinters: { " + "x: *a, ".repeat(count) + "}");
    assertTold("printers: " + "a".repeat(count * 2_000));
  }

  private static void assertTold(String text) {
    Result result = ConfigReader.read(Shop.FILE, text);
    List<Fault> faults = result.fold(settings -> List.of(), told -> told);

    if (result instanceof Result.Faulty) {
      assertThat(faults).isNotEmpty().allSatisfy(fault -> assertThat(fault.allowed()).isNotBlank());
    }
    assertThat(faults)
        .extracting(fault -> Integer.parseInt(fault.where().substring(Shop.FILE.length() + 1)))
        .isSorted()
        .allSatisfy(line -> assertThat(line).isPositive());
  }
}
