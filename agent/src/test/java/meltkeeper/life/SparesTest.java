package meltkeeper.life;

import static meltkeeper.life.Lives.alive;
import static meltkeeper.life.Lives.at;
import static meltkeeper.life.Near.relatively;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import meltkeeper.part.Belief;
import meltkeeper.part.Exposure;
import org.junit.jupiter.api.Test;

class SparesTest {

  private static final Spares.Place HERON =
      new Spares.Place(alive("L-1", Exposure.NONE), at(220, 10));

  private static Posterior sure(double shape) {
    return Posterior.of(new Belief(600, 0.001, shape, 0.001, 10, 0.001, 220), List.of());
  }

  @Test
  void chanceFailures_areAPoissonCount() {
    // Shape 1: a Poisson process. 600 days of 10 h, 3 places: mean 30, variance 30;
    // P(count <= 39) = 0.9537, P(count <= 38) = 0.9352 (the Poisson series, summed).
    Spares spares =
        Spares.needed(
            sure(1), Collections.nCopies(3, HERON), 600, OptionalDouble.empty(), 0.945, 1);
    relatively(spares.mean(), 30, 0.01);
    assertThat(spares.enough()).isBetween(38, 40);
  }

  @Test
  void plannedSwaps_ofSturdyParts_keepToTheCalendar() {
    // Parts of shape 40 do not fail before 300 h: 60 days of 10 h hold exactly two swaps.
    Spares spares = Spares.needed(sure(40), List.of(HERON), 60, OptionalDouble.of(299), 0.95, 1);
    assertThat(spares.mean()).isCloseTo(2, within(1e-9));
    assertThat(spares.enough()).isEqualTo(2);
  }

  @Test
  void sameSeed_sameAnswer() {
    Posterior posterior = Posterior.of(Lives.LINER, PosteriorTwoUnknownsTest.SIX);
    Spares first = Spares.needed(posterior, List.of(HERON), 90, OptionalDouble.of(450), 0.9, 42);
    assertThat(Spares.needed(posterior, List.of(HERON), 90, OptionalDouble.of(450), 0.9, 42))
        .isEqualTo(first);
    assertThat(first.enough()).isGreaterThanOrEqualTo(2);
  }

  @Test
  void idlePlace_needsNone() {
    Spares spares =
        Spares.needed(
            sure(2.5),
            List.of(new Spares.Place(alive("L-1", at(220, 100)), Exposure.NONE)),
            90,
            OptionalDouble.empty(),
            0.9,
            1);
    assertThat(spares).isEqualTo(new Spares(0, 0));
  }
}
