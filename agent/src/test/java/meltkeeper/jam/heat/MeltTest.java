package meltkeeper.jam.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Expected values: computed apart, in Python with numpy and scipy, from the densities and heats
 * named here.
 */
class MeltTest {

  @ParameterizedTest
  @CsvSource({
    "PLA, 210, 359.92, 0.44630",
    "PETG, 240, 371.73, 0.47210",
    "ABS, 240, 424.83, 0.44182",
    "TPU, 225, 375.98, 0.45118",
    "PA6, 260, 503.19, 0.56860"
  })
  void heat_fromTheRoomToTheNozzle_isTheReferences(
      String label, double celsius, double perGram, double perCubicMm) {
    Polymer polymer = Polymer.ofLabel(label).orElseThrow();
    assertThat(polymer.joulesPerGram(25, celsius)).isCloseTo(perGram, within(0.0051));
    assertThat(polymer.joulesPerCubicMm(25, celsius)).isCloseTo(perCubicMm, within(0.000006));
  }

  @ParameterizedTest
  @CsvSource({
    "0.5, 0.5367, 0.01342",
    "1, 1.0735, 0.02684",
    "2, 2.1470, 0.05367",
    "3, 3.2205, 0.08051",
    "5, 5.3674, 0.13419",
    "8, 8.5879, 0.21470"
  })
  void power_ofAFeedOfPla_isTheReferences(double speed, double watts, double duty) {
    double heat = Polymer.PLA.joulesPerCubicMm(25, 210);
    assertThat(Melt.watts(speed, heat)).isCloseTo(watts, within(0.00006));
    assertThat(Melt.duty(speed, heat, 40)).isCloseTo(duty, within(0.00001));
  }

  /** Area of 1.75 mm filament, computed apart in Python. */
  @Test
  void filament_isRound() {
    assertThat(Melt.FILAMENT_SQUARE_MM).isCloseTo(2.405282, within(5e-7));
  }

  @ParameterizedTest
  @CsvSource({"matt PLA black, PLA", "PETG clear, PETG", "pla+, PLA", "Tpu 95A, TPU"})
  void label_thatNamesAPolymer_findsIt(String label, String name) {
    assertThat(Polymer.ofLabel(label).map(Polymer::name)).contains(name);
  }

  @Test
  void heat_ofAnUnknownMaterial_isTheUsual() {
    assertThat(Melt.joulesPerCubicMm("mystery", 215)).isBetween(0.44, 0.48);
  }

  @Test
  void heat_beyondTheTable_growsWithTheLastValue() {
    double at240 = Polymer.ABS.joulesPerGram(25, 240);
    assertThat(Polymer.ABS.joulesPerGram(25, 250) - at240).isCloseTo(24.0, within(1e-9));
    assertThat(Polymer.ABS.joulesPerGram(10, 20)).isCloseTo(14.0, within(1e-9));
  }

  @Test
  void polymer_withoutTwoHeats_isRefused() {
    assertThatThrownBy(() -> new Polymer("X", 1, List.of(new Polymer.SpecificHeat(20, 1))))
        .hasMessage("a polymer needs a density above 0 and two specific heats, not 1.0 and 1");
  }
}
