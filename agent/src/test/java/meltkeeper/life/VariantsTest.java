package meltkeeper.life;

import static meltkeeper.life.Lives.LINER;
import static meltkeeper.life.Lives.alive;
import static meltkeeper.life.Lives.at;
import static meltkeeper.life.Lives.failed;
import static meltkeeper.life.Near.relatively;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class VariantsTest {

  private static List<PartLife> parts(String variant, double life, int count, long seed) {
    Random random = new Random(seed);
    List<PartLife> parts = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double hours = Weibull.of(life, 3).quantile((i + 0.2 + 0.6 * random.nextDouble()) / count);
      parts.add(failed(variant + "-" + i, at(220, hours)).withVariant(variant));
    }
    return parts;
  }

  @Test
  void noVariant_nothingToTell() {
    assertThat(Variants.of(LINER, PosteriorTwoUnknownsTest.SIX)).isEmpty();
  }

  @Test
  void twoVariants_oneTwiceAsGood_toldApart() {
    List<PartLife> all = parts("plain", 450, 15, 1);
    all.addAll(parts("plated", 900, 15, 2));
    Variants variants = Variants.of(LINER, all).orElseThrow();
    assertThat(variants.probabilityDifferent()).isGreaterThan(0.97);
    VariantLife plain = variants.variants().get(0);
    VariantLife plated = variants.variants().get(1);
    assertThat(plain.variant()).isEqualTo("plain");
    assertThat(plain.probabilityLonger()).isLessThan(0.15);
    assertThat(plated.probabilityLonger()).isGreaterThan(0.85);
    assertThat(plain.lifeHours().p50()).isCloseTo(450, within(60.0));
    assertThat(plated.lifeHours().p50()).isCloseTo(900, within(110.0));
    assertThat(plated.failures()).isEqualTo(15);
  }

  @Test
  void twoVariants_alike_notToldApart() {
    List<PartLife> all = parts("a", 600, 12, 3);
    all.addAll(parts("b", 600, 12, 3));
    Variants variants = Variants.of(LINER, all).orElseThrow();
    assertThat(variants.probabilityDifferent()).isLessThan(variants.believedDifferent());
    assertThat(variants.variants().get(0).probabilityLonger()).isBetween(0.35, 0.65);
    // Equal data: equal answers.
    relatively(
        variants.variants().get(0).lifeHours().mean(),
        variants.variants().get(1).lifeHours().mean(),
        1e-6);
  }

  @Test
  void variantWithTwoFailures_leansOnItsKind() {
    List<PartLife> all = parts("plain", 600, 30, 4);
    all.addAll(parts("new", 300, 2, 5));
    VariantLife leaning = Variants.of(LINER, all).orElseThrow().variants().get(0);
    double alone = Posterior.of(LINER, parts("new", 300, 2, 5)).lifeHours().p50();
    double kind = Posterior.of(LINER, parts("plain", 600, 30, 4)).lifeHours().p50();
    assertThat(leaning.variant()).isEqualTo("new");
    assertThat(leaning.lifeHours().p50()).isBetween(Math.min(alone, 300), kind);
    assertThat(leaning.probabilityLonger()).isLessThan(0.4);
  }

  @Test
  void variantWithoutFailure_answer_nearItsKind() {
    List<PartLife> all = parts("plain", 600, 30, 4);
    all.add(alive("x-1", at(220, 50)).withVariant("x"));
    VariantLife fresh = Variants.of(LINER, all).orElseThrow().variants().get(1);
    assertThat(fresh.probabilityLonger()).isCloseTo(0.5, within(0.02));
    assertThat(fresh.lifeHours().p50()).isCloseTo(600, within(60.0));
  }

  @Test
  void oneVariantAlone_isAlmostItsKind() {
    List<PartLife> parts = parts("only", 500, 20, 6);
    VariantLife only = Variants.of(LINER, parts).orElseThrow().variants().get(0);
    relatively(only.lifeHours().p50(), Posterior.of(LINER, parts).lifeHours().p50(), 0.03);
  }

  @Test
  void variantsFarApart_staysFinite() {
    List<PartLife> all = parts("short", 20, 20, 7);
    all.addAll(parts("long", 20_000, 20, 8));
    Variants variants = Variants.of(LINER, all).orElseThrow();
    assertThat(variants.variants().get(0).lifeHours().mean()).isFinite().isPositive();
    assertThat(variants.probabilityDifferent()).isCloseTo(1, within(1e-6));
  }
}
