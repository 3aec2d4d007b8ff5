package meltkeeper.protocol;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearestTest {

  private static final List<String> KNOWN = List.of("liner", "nozzle", "heat-break", "L-014");

  @ParameterizedTest
  @CsvSource({
    "lner, liner",
    "linre, liner",
    "NOZLE, nozzle",
    "heatbreak, heat-break",
    "l-14, L-014",
    "L-015, L-014",
    "noz, nozzle",
    "Heat, heat-break"
  })
  void slip_isTracedToTheWordMeant(String found, String meant) {
    assertThat(Nearest.to(found, KNOWN)).contains(meant);
  }

  @ParameterizedTest
  @CsvSource({"fan", "''", "thermometer"})
  void strangeWord_isTracedToNothing(String found) {
    assertThat(Nearest.to(found, KNOWN)).isEmpty();
  }
}
