package meltkeeper.life;

import static meltkeeper.life.Near.nearly;
import static meltkeeper.life.Near.published;

import meltkeeper.part.Exposure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Conversions. Values computed in R 4.2.2 from the formulas with the constants of the SI of 2019.
 */
class ThermalTest {

  @ParameterizedTest
  @CsvSource({
    "200, 6, 217.760313, 215.033481, 212.306648",
    "200, 8, 164.001943, 161.275110, 158.548278",
    "200, 10, 131.746921, 129.020088, 126.293256",
    "200, 12, 110.243573, 107.516740, 104.789908",
    "200, 15, 88.7402249, 86.0133922, 83.2865596",
    "220, 6, 236.438670, 233.596575, 230.754479",
    "220, 8, 178.039527, 175.197431, 172.355336",
    "220, 10, 143.000041, 140.157945, 137.315849",
    "220, 12, 119.640383, 116.798287, 113.956192",
    "220, 15, 96.2807256, 93.4386300, 90.5965343",
    "225, 6, 241.228325, 238.357414, 235.486503",
    "225, 8, 181.638972, 178.768061, 175.897149",
    "225, 10, 145.885360, 143.014448, 140.143537",
    "225, 12, 122.049618, 119.178707, 116.307796",
    "225, 15, 98.2138769, 95.3429656, 92.4720543",
    "240, 6, 255.885447, 252.928089, 249.970730",
    "240, 8, 192.653425, 189.696067, 186.738708",
    "240, 10, 154.714212, 151.756853, 148.799495",
    "240, 12, 129.421403, 126.464044, 123.506686",
    "240, 15, 104.128594, 101.171235, 98.2138769"
  })
  void halvingInterval_asActivationEnergy_kilojoules(
      double celsius, double halving, double up, double tangent, double down) {
    nearly(Thermal.energyHalvingUp(celsius, halving) / 1000, up);
    nearly(Thermal.energyTangent(celsius, halving) / 1000, tangent);
    nearly(Thermal.energyDoublingDown(celsius, halving) / 1000, down);
    nearly(Thermal.halvingOf(celsius, Thermal.energyHalvingUp(celsius, halving)), halving);
  }

  @Test
  void activationEnergy_inElectronvolts() {
    nearly(Thermal.electronvolts(Thermal.energyHalvingUp(225, 10)), 1.51199521);
  }

  @ParameterizedTest
  @CsvSource({
    "190, 0.0883883476, 0.0698274155",
    "200, 0.176776695, 0.155508917",
    "215, 0.5, 0.486000259",
    "220, 0.707106781, 0.699691876",
    "225, 1, 1",
    "230, 1.41421356, 1.41909257",
    "237, 2.29739671, 2.28991731",
    "245, 4, 3.89440018",
    "250, 5.65685425, 5.38265828",
    "260, 11.3137085, 10.0971840"
  })
  void ageing_againstTheReference_bothRules(double celsius, double halving, double arrhenius) {
    nearly(Thermal.halvingRate(celsius, 225, 10), halving);
    nearly(Thermal.arrheniusRate(celsius, 225, Thermal.energyHalvingUp(225, 10)), arrhenius);
  }

  @Test
  void tenDegreeRule_atNineTenthsElectronvolt_isTooFast() {
    // The rule says 2 (tnlab.org on IEC 60085); Arrhenius gives 1.745, and doubling needs 1.1205
    // eV.
    double perMole = Thermal.GAS / Thermal.BOLTZMANN;
    published(Thermal.arrheniusRate(165, 155, 0.9 * perMole), 1.745, 3);
    published(Thermal.electronvolts(Thermal.energyHalvingUp(155, 10)), 1.1205, 4);
  }

  @ParameterizedTest
  @CsvSource({
    "96, 15.36",
    "145, 10.06",
    "177.5, 8.19",
    "190, 7.643",
    "203, 7.146",
    "204.5, 7.093",
    "242.4, 5.971",
    "336.812, 4.283",
    "430.952, 3.341"
  })
  void massLossEnergies_ofPolymers_halvingIntervalsAt225(double kilojoules, String kelvin) {
    int decimals = kelvin.length() - kelvin.indexOf('.') - 1;
    published(Thermal.halvingOf(225, kilojoules * 1000), Double.parseDouble(kelvin), decimals);
  }

  @Test
  void referenceHours_ofMixedHours() {
    Exposure mixed = Exposure.of(220, 400).plus(Exposure.of(237, 180));
    nearly(mixed.referenceHours(220, 10), 984.821725);
    nearly(mixed.referenceHours(220, 7), 1369.04814);
    nearly(Exposure.of(237, 600).referenceHours(225, 10), 1378.43803);
    nearly(Exposure.of(220, 250).plus(Exposure.of(245, 120)).referenceHours(220, 10), 928.822510);
  }

  @Test
  void bandMean_standsForHoursSpreadEvenlyInIt() {
    nearly(Exposure.of(217.5, 1).referenceHours(220, 10), 0.840896415);
    nearly(Thermal.rampHours(1, 215, 220, 220, 10), 0.845111189);
  }

  @ParameterizedTest
  @CsvSource({
    "1, 215, 220, 0.845111189",
    "90, 150, 237, 48.3730237",
    "300, 237, 150, 161.243412",
    "7, 220, 220, 7"
  })
  void ramp_linearInTime_referenceHours(double hours, double from, double to, double expected) {
    nearly(Thermal.rampHours(hours, from, to, 220, 10), expected);
  }
}
