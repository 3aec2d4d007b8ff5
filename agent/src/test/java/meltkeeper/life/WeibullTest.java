package meltkeeper.life;

import static meltkeeper.life.Near.nearly;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Residual life. Closed forms, evaluated in R 4.2.2 and checked there against numerical
 * integration.
 */
class WeibullTest {

  @ParameterizedTest
  @CsvSource({
    "0.8, 300, 0.0358161596, 815.148374, 506.927749",
    "1, 300, 0.0392105608, 600.000000, 415.888308",
    "1.5, 0, 0.00796808516, 541.647176, 469.931861",
    "1.5, 300, 0.0423414151, 398.413663, 318.537770",
    "1.5, 900, 0.0713027064, 288.596016, 214.111175",
    "2.5, 0, 0.000319948805, 532.358291, 518.180940",
    "2.5, 300, 0.0368100779, 294.475534, 267.471102",
    "2.5, 550, 0.0866692618, 187.702640, 155.205358",
    "2.5, 900, 0.170889833, 111.385567, 84.5088397",
    "2.5, 3000, 0.675266726, 21.2421586, 14.8242874",
    "4, 550, 0.123259858, 118.435832, 102.562751"
  })
  void residualLife_atAge_closedForms(
      double shape, double age, double within24, double mean, double median) {
    Weibull life = Weibull.of(600, shape);
    nearly(life.failureWithin(24, age), within24);
    nearly(life.meanResidualHours(age), mean);
    nearly(life.medianResidualHours(age), median);
  }

  @Test
  void hotBatch_atItsOwnTemperature_probability() {
    double hours = 24 * Thermal.halvingRate(237, 220, 10);
    nearly(Weibull.of(600, 2.5).failureWithin(hours, 550), 0.271065064);
  }

  @Test
  void twoParts_atLeastOneFails_probability() {
    double first = Weibull.of(600, 2.5).failureWithin(24, 550);
    double second = Weibull.of(1200, 2).failureWithin(24, 200);
    nearly(Risk.ofAny(List.of(first, second)), 0.0931007145);
  }

  @Test
  void tinyHazard_probability_keepsItsDigits() {
    assertThat(Weibull.of(1e9, 2).failureWithin(1, 0)).isEqualTo(1e-18, within(1e-24));
  }
}
