package meltkeeper.life;

import static meltkeeper.life.Near.nearly;
import static meltkeeper.life.Near.published;
import static meltkeeper.life.Near.relatively;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Right-censored Weibull fits of one sample. Nine-digit values were computed with R 4.2.2, survreg
 * of survival 3.5-3, and checked there against a likelihood written apart from it.
 */
class OneSampleFitTest {

  private static final int LOG_LIFE = 0;
  private static final int LOG_SCALE = 1;

  private static LifeRegression regression(List<Observation> rows) {
    return LifeRegression.ofOneSample(Family.WEIBULL, rows);
  }

  private static Maximum maximum(List<Observation> rows) {
    return (Maximum) regression(rows).fit();
  }

  @Test
  void nistHandbook_pageData_publishedFit() {
    Maximum fit = maximum(PublishedData.nist(54));
    // NIST/SEMATECH e-Handbook 8.4.1.3, as quoted by two public test suites; the printed
    // characteristic life is 7e-7 above the exact maximum.
    relatively(fit.lifeHours(), 606.5280, 1e-5);
    published(fit.shape(), 1.7208, 4);
    published(fit.logLikelihood(), -75.135, 3);
    nearly(fit.lifeHours(), 606.527558);
    nearly(fit.shape(), 1.72079726);
    nearly(fit.logLikelihood(), -75.1346182);
    nearly(fit.covariance().get(0).get(0), 0.0424128936);
    nearly(fit.covariance().get(0).get(1), 0.0271278424);
    nearly(fit.covariance().get(1).get(1), 0.0851546887);
    nearly(new Weibull(fit.intercept(), -fit.logScale()).quantile(0.1), 164.022439);
  }

  @Test
  void nistHandbook_listingData_publishedFit() {
    Maximum fit = maximum(PublishedData.nist(55));
    // NIST/SEMATECH e-Handbook 8.4.1.3, its R listing.
    published(fit.lifeHours(), 606.005, 3);
    published(fit.shape(), 1.72563, 5);
    published(fit.logLikelihood(), -75.122, 3);
    published(fit.intercept(), 6.407, 3);
    published(fit.standardError(LOG_LIFE), 0.205, 3);
    published(fit.logScale(), -0.546, 3);
    published(fit.standardError(LOG_SCALE), 0.292, 3);
    Weibull life = new Weibull(fit.intercept(), -fit.logScale());
    published(life.meanHours(), 540.175, 3);
    nearly(fit.lifeHours(), 606.004798);
    nearly(fit.shape(), 1.72562575);
    nearly(fit.covariance().get(0).get(0), 0.0421609365);
    nearly(fit.covariance().get(0).get(1), 0.0270202020);
    nearly(fit.covariance().get(1).get(1), 0.0851029424);
    within(fit.wald(LOG_LIFE, 0.95).exp(), 405.226423, 906.263250);
    within(shape(fit.wald(LOG_SCALE, 0.95)), 0.974160736, 3.05676890);
    nearly(life.quantile(0.1), 164.481845);
  }

  @Test
  void nistHandbook_bothIntervals_referenceEnds() {
    LifeRegression regression = regression(PublishedData.nist(54));
    Maximum fit = (Maximum) regression.fit();
    within(fit.wald(LOG_LIFE, 0.95).exp(), 405.089294, 908.134785);
    within(shape(fit.wald(LOG_SCALE, 0.95)), 0.971266102, 3.04874556);
    within(regression.likelihoodRatio(fit, LOG_LIFE, 0.95).exp(), 437.556745, 1118.87762);
    within(shape(regression.likelihoodRatio(fit, LOG_SCALE, 0.95)), 0.905645359, 2.88573787);
  }

  @Test
  void fans_fit_referenceValues() {
    LifeRegression regression = regression(PublishedData.fans());
    Maximum fit = (Maximum) regression.fit();
    nearly(fit.lifeHours(), 26296.8452);
    nearly(fit.shape(), 1.05844585);
    nearly(fit.logLikelihood(), -135.152720);
    nearly(fit.covariance().get(0).get(0), 0.217053176);
    nearly(fit.covariance().get(0).get(1), 0.0957276112);
    nearly(fit.covariance().get(1).get(1), 0.0642310911);
    within(fit.wald(LOG_LIFE, 0.95).exp(), 10552.0697, 65534.4483);
    within(shape(fit.wald(LOG_SCALE, 0.95)), 0.644082312, 1.73938579);
    within(regression.likelihoodRatio(fit, LOG_LIFE, 0.95).exp(), 13631.2390, 106086.921);
    within(shape(regression.likelihoodRatio(fit, LOG_SCALE, 0.95)), 0.605974190, 1.65794086);
    nearly(new Weibull(fit.intercept(), -fit.logScale()).quantile(0.1), 3137.24078);
  }

  @Test
  void noFailure_fit_noMaximum() {
    Fit fit = regression(List.of(new Observation.Survived(600, 0, 3))).fit();
    assertThat(fit).isEqualTo(new Fit.NoMaximum(Fit.Reason.NO_FAILURE));
  }

  @Test
  void noDataAtAll_fit_noMaximum() {
    assertThat(regression(List.of()).fit()).isEqualTo(new Fit.NoMaximum(Fit.Reason.NO_FAILURE));
  }

  @Test
  void failuresAtOneAgeAndNoneLater_fit_noMaximum() {
    Fit fit =
        regression(List.of(new Observation.Failed(500, 0, 2), new Observation.Survived(400, 0, 1)))
            .fit();
    assertThat(fit).isEqualTo(new Fit.NoMaximum(Fit.Reason.NO_SCATTER));
  }

  @Test
  void failuresAtOneAgeAndSurvivorsLater_fit_maximum() {
    assertThat(
            regression(
                    List.of(new Observation.Failed(500, 0, 2), new Observation.Survived(900, 0, 1)))
                .fit())
        .isInstanceOf(Maximum.class);
  }

  @Test
  void hoursInMinutes_fit_sameShapeAndSixtyfoldLife() {
    List<Observation> minutes =
        new PublishedData(celsius -> 0)
            .failed(60 * 54, 60 * 187, 60 * 216, 60 * 240, 60 * 244)
            .failed(60 * 335, 60 * 361, 60 * 373, 60 * 375, 60 * 386)
            .survived(60 * 500, 10)
            .rows();
    Maximum fit = maximum(minutes);
    nearly(fit.lifeHours(), 60 * 606.527558);
    nearly(fit.shape(), 1.72079726);
  }

  private static Range shape(Range logScale) {
    return new Range(Math.exp(-logScale.high()), Math.exp(-logScale.low()));
  }

  private static void within(Range range, double low, double high) {
    nearly(range.low(), low);
    nearly(range.high(), high);
  }
}
