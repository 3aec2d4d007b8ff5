package meltkeeper.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NozzleTest {

  /** Source: inverse of the power law, r/r0 = (phi ratio^n)^(1/(3n+1)), computed with numpy. */
  @ParameterizedTest
  @CsvSource({
    ".2, 1, .65136, .9", ".2, .5, .45731, .5", ".3, 1, .41618, .1",
    ".3, .5, .60492, .9", ".3, .5, .38981, .1", ".5, .5, .70568, .7"
  })
  void bore_closedThatFar_feedsThatShare(double load, double index, double openness, double share) {
    assertThat(Nozzle.fedOf(load, index, openness)).isCloseTo(share, within(0.0002));
  }

  /** Source: onset of slip at phi 0.3, n 0.5 in the same table. */
  @Test
  void bore_closingToTheOnset_showsNothingInFlowButLoadsTheGear() {
    assertThat(Nozzle.fed(Nozzle.USUAL_SPEED, 0.6179)).isEqualTo(1);
    assertThat(Nozzle.fed(Nozzle.USUAL_SPEED, 0.6177)).isLessThan(1);
    assertThat(Nozzle.load(Nozzle.USUAL_SPEED, 0.6179)).isCloseTo(1, within(0.001));
    assertThat(Nozzle.load(Nozzle.USUAL_SPEED, 1)).isEqualTo(0.3);
  }

  @Test
  void bore_narrowed_slipsFirstOnTheFastestMoves() {
    assertThat(Nozzle.fed(6, 0.6)).isLessThan(1);
    assertThat(Nozzle.fed(2, 0.6)).isEqualTo(1);
    assertThat(Nozzle.fed(2, 0)).isZero();
  }
}
