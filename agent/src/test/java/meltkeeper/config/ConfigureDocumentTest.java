package meltkeeper.config;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import meltkeeper.part.Belief;
import meltkeeper.protocol.Signal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** {@code docs/configure.md} tells the truth: its tables are the reader's own list of keys. */
class ConfigureDocumentTest {

  private static final String DOCUMENT = Shop.document("configure.md");

  @ParameterizedTest
  @EnumSource(mode = EnumSource.Mode.EXCLUDE, names = "READ")
  void keysOfASection_documented_areThoseOfTheReader(Section section) {
    List<List<String>> keys =
        Keys.ALL.stream()
            .filter(key -> key.section() == section)
            .map(key -> List.of(key.label(), key.byDefault(), key.form().allowed()))
            .toList();

    assertThat(tableBelow(section.path())).isEqualTo(keys);
  }

  @Test
  void signals_documented_areThoseThatAMappingMayRead() {
    List<List<String>> signals =
        Arrays.stream(Signal.values())
            .map(signal -> List.of(signal.label(), signal.allowed()))
            .sorted((a, b) -> a.get(0).compareTo(b.get(0)))
            .toList();

    assertThat(
            tableBelow(Section.READ.path()).stream()
                .map(row -> row.subList(0, 2))
                .collect(Collectors.toList()))
        .isEqualTo(signals);
  }

  @Test
  void knownKinds_documented_areThoseOfTheReader() {
    List<List<String>> kinds =
        KindReader.KNOWN.values().stream()
            .map(
                kind -> {
                  Belief belief = kind.belief().orElseThrow();
                  return List.of(
                      kind.name(),
                      written(belief.lifeHours()),
                      written(belief.spread()) + ", " + written(belief.shape()));
                })
            .toList();

    assertThat(tableBelow("the known kinds")).isEqualTo(kinds);
  }

  private static String written(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }

  @Test
  void example_documented_isTheExampleFile() {
    assertThat(DOCUMENT).contains("```yaml\n" + Shop.document("example.yaml") + "```");
  }

  /** The first three cells of each row of the first table below a heading, without backquotes. */
  private static List<List<String>> tableBelow(String heading) {
    return DOCUMENT
        .lines()
        .dropWhile(line -> !line.matches("#+ `?\\Q" + heading + "\\E`?"))
        .dropWhile(line -> !line.startsWith("|---"))
        .skip(1)
        .takeWhile(line -> line.startsWith("|"))
        .map(ConfigureDocumentTest::cells)
        .toList();
  }

  private static List<String> cells(String row) {
    return Arrays.stream(row.substring(1).split("\\|", -1))
        .limit(3)
        .map(cell -> cell.replace("`", "").strip())
        .toList();
  }
}
