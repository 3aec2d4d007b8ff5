package meltkeeper.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The simulator's energy balance against closed forms and against figures computed elsewhere. */
class HeatTest {

  private static final double STEP = 0.02;

  /** Source: integrals of the same specific heats, computed with numpy, to the digits shown. */
  @ParameterizedTest
  @CsvSource({
    "PLA, 210, 359.92, 0.44630",
    "PETG, 240, 371.73, 0.47210",
    "ABS, 240, 424.83, 0.44182"
  })
  void plastic_meltedFrom25_takesTheHeatOfItsTable(
      String name, double celsius, double joulesPerGram, double wattsPerCubicMillimetre) {
    Plastic plastic = plastic(name);
    assertThat(plastic.joulesPerGram(25, celsius)).isCloseTo(joulesPerGram, within(0.0051));
    assertThat(plastic.meltWatts(1 / Plastic.FILAMENT_MM2, 25, celsius))
        .isCloseTo(wattsPerCubicMillimetre, within(0.000005));
  }

  /** Source: feed table for PLA at 210 °C, computed with numpy, to the digits shown. */
  @ParameterizedTest
  @CsvSource({"0.5, 0.5367", "1, 1.0735", "2, 2.1470", "3, 3.2205", "5, 5.3674", "8, 8.5879"})
  void feed_ofPlaAt210_takesPowerInProportion(double millimetresPerSecond, double watts) {
    assertThat(Plastic.PLA.meltWatts(millimetresPerSecond, 25, 210))
        .isCloseTo(watts, within(0.00005));
  }

  /** Source: losses 0.045 W/K over 185 K, and melt heat as above, of a 40 W heater. */
  @ParameterizedTest
  @CsvSource({"0, 0.20813", "5, 0.34231"})
  void duty_inSteadyState_isLossesAndMeltHeatOverHeaterWatts(double speed, double duty) {
    HeaterBlock block = new HeaterBlock();
    Regulator regulator = new Regulator(2, 40, 0, 40);
    double last = 0;
    for (int i = 0; i < 3600 / STEP; i++) {
      last = regulator.duty(STEP, 210, block.sensorCelsius());
      double melt = Plastic.PLA.meltWatts(speed, 25, block.blockCelsius());
      block.step(STEP, last * 40 - melt, 0);
    }
    assertThat(last).isCloseTo(duty, within(0.00001));
    assertThat(block.sensorCelsius()).isCloseTo(210, within(0.001));
  }

  /** Source: closed form of C dT/dt = -G (T - ambient); after C/G seconds 1/e is left. */
  @Test
  void block_coolingForItsTimeConstant_keepsOneEthOfItsExcess() {
    HeaterBlock block = new HeaterBlock();
    for (int i = 0; i < 10_000; i++) {
      block.step(1, HeaterBlock.LOSS * 200, 0);
    }
    assertThat(block.blockCelsius()).isCloseTo(225, within(1e-6));
    int steps = 3_000;
    for (int i = 0; i < steps; i++) {
      block.step(HeaterBlock.CAPACITY / HeaterBlock.LOSS / steps, 0, 0);
    }
    assertThat(block.blockCelsius() - 25).isCloseTo(200 / Math.E, within(1e-6));
  }

  /**
   * Source: closed loop of the same equations integrated with numpy at 0.02 s: a loss of flow from
   * steady state lifts the sensor by that peak, at that time.
   */
  @ParameterizedTest
  @CsvSource({
    "1, 40, 1.000, 0.742, 25.6",
    "2, 40, 5.367, 2.380, 16.4",
    "2, 20, 5.367, 2.203, 14.6"
  })
  void sensor_whenFlowStops_bumpsAsTheClosedLoopDoes(
      double gain, double integral, double lost, double peakKelvin, double atSeconds) {
    HeaterBlock block = new HeaterBlock();
    Regulator regulator = new Regulator(gain, integral, 0, 400);
    for (int i = 0; i < 7200 / STEP; i++) {
      block.step(STEP, regulator.duty(STEP, 210, block.sensorCelsius()) * 400 - lost, 0);
    }
    double peak = 0;
    double at = 0;
    for (int i = 1; i <= 60 / STEP; i++) {
      block.step(STEP, regulator.duty(STEP, 210, block.sensorCelsius()) * 400, 0);
      if (block.sensorCelsius() - 210 > peak) {
        peak = block.sensorCelsius() - 210;
        at = i * STEP;
      }
    }
    assertThat(peak).isCloseTo(peakKelvin, within(0.01 * peakKelvin));
    assertThat(at).isCloseTo(atSeconds, within(0.3));
  }

  @Test
  void heatUp_fromCold_overshootsLittleAndSettles() {
    HeaterBlock block = new HeaterBlock();
    Regulator regulator = new Regulator(2, 40, 2, SimulatedPrinter.HEATER_WATTS);
    double highest = 0;
    for (int i = 0; i < 6_000; i++) {
      double duty = regulator.duty(0.1, 237, block.sensorCelsius());
      block.step(0.1, duty * SimulatedPrinter.HEATER_WATTS, 0);
      highest = Math.max(highest, block.sensorCelsius());
    }
    assertThat(highest).isBetween(237.0, 243.0);
    assertThat(block.sensorCelsius()).isCloseTo(237, within(0.05));
  }

  private static Plastic plastic(String name) {
    return switch (name) {
      case "PLA" -> Plastic.PLA;
      case "PETG" -> Plastic.PETG;
      default -> Plastic.ABS;
    };
  }
}
