package meltkeeper.life;

import static meltkeeper.life.Near.nearly;
import static meltkeeper.life.Near.published;
import static meltkeeper.life.Near.relatively;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Fits at several temperatures. Where no book is named, the values were computed with R 4.2.2,
 * survreg of survival 3.5-3.
 */
class TemperatureFitTest {

  private static double bookArrhenius(double celsius) {
    return 11605 / (celsius + 273.15);
  }

  private static Maximum fit(Family family, List<Observation> rows) {
    return (Maximum) LifeRegression.onCovariate(family, rows).fit();
  }

  private static Maximum cell(Family family, List<Observation> rows) {
    return (Maximum) LifeRegression.ofOneSample(family, rows).fit();
  }

  @Test
  void nistHandbook_lognormalArrhenius_publishedFit() {
    // NIST/SEMATECH e-Handbook 8.4.2.2, its R listing.
    DoubleUnaryOperator x = celsius -> 1 / (8.617e-5 * (celsius + 273.16));
    Maximum fit = fit(Family.LOGNORMAL, PublishedData.nistCells(x, 85, 105, 125));
    published(fit.intercept(), -19.906, 3);
    published(fit.standardError(0), 2.3204, 4);
    published(fit.slope(), 0.863, 3);
    published(fit.standardError(1), 0.0761, 4);
    published(fit.logScale(), -0.259, 3);
    published(fit.standardError(2), 0.0928, 4);
    published(fit.scale(), 0.772, 3);
    published(fit.logLikelihood(), -476.7089, 4);
    double cells =
        Stream.of(85, 105, 125)
            .mapToDouble(t -> cell(Family.LOGNORMAL, PublishedData.nistCells(x, t)).logLikelihood())
            .sum();
    published(cells, -475.1119, 4);
    double ratio = 2 * (cells - fit.logLikelihood());
    published(ratio, 3.194015, 6);
    published(1 - new ChiSquaredDistribution(3).cumulativeProbability(ratio), 0.3626682, 7);
  }

  @Test
  void deviceA_lognormalArrhenius_bookFit() {
    Maximum fit = fit(Family.LOGNORMAL, PublishedData.deviceA(TemperatureFitTest::bookArrhenius));
    // Meeker and Escobar 1998, ex. 19.5; the figures quoted from memory.
    published(fit.intercept(), -13.469, 3);
    published(fit.slope(), 0.6279, 4);
    published(fit.scale(), 0.9778, 4);
    published(fit.logLikelihood(), -321.7, 1);
    nearly(fit.logLikelihood(), -321.702778);
    relatively(fit.standardError(0), 2.8872, 1e-4);
    relatively(fit.standardError(1), 0.0828388, 4e-6);
    relatively(fit.scale() * fit.standardError(2), 0.132647, 4e-6);
  }

  @Test
  void circuits_intervalCensoredLognormal_bookFit() {
    Maximum fit =
        fit(
            Family.LOGNORMAL,
            PublishedData.circuits(TemperatureFitTest::bookArrhenius, 150, 175, 200, 250, 300));
    // Meeker and Escobar 1998, ex. 19.11, as reprinted.
    published(fit.scale() * fit.standardError(2), 0.06, 2);
    published(fit.standardError(0), 1.5, 1);
    published(fit.standardError(1), 0.07, 2);
    nearly(fit.scale(), 0.516508304);
    nearly(fit.intercept(), -10.1718399);
    nearly(fit.slope(), 0.826496520);
    nearly(fit.logLikelihood(), -88.3578017);
    double cells =
        cell(Family.LOGNORMAL, PublishedData.circuits(t -> 0, 250)).logLikelihood()
            + cell(Family.LOGNORMAL, PublishedData.circuits(t -> 0, 300)).logLikelihood();
    published(2 * (cells - fit.logLikelihood()), 4.7, 1);
    nearly(2 * (cells - fit.logLikelihood()), 4.71901);
  }

  @Test
  void classB_withoutTheCoolCell_bookFit() {
    List<Observation> rows = PublishedData.classBHot(celsius -> 1000 / (celsius + 273.2));
    Maximum fit = fit(Family.WEIBULL, rows);
    // SAS/STAT User's Guide, LIFEREG, motorettes; the figures quoted from memory.
    published(fit.intercept(), -11.8912, 4);
    published(fit.slope(), 9.0383, 4);
    published(fit.scale(), 0.3613, 4);
    double logHours =
        rows.stream()
            .filter(o -> o instanceof Observation.Failed)
            .mapToDouble(o -> Math.log(((Observation.Failed) o).hours()))
            .sum();
    published(fit.logLikelihood() + logHours, -22.951, 3);
  }

  @Test
  void exponential_threeTemperatures_bookEnergy() {
    // Yang 2007, ex. 7.1, as reprinted: 0.323 eV.
    List<Observation> rows =
        new PublishedData(Thermal::arrheniusCovariate)
            .at(85)
            .failed(2385, 2537)
            .at(100)
            .failed(1655, 1738)
            .at(115)
            .failed(1025, 1163)
            .rows();
    Maximum fit = (Maximum) LifeRegression.onCovariate(Family.WEIBULL, rows).fitWithScale(1);
    published(fit.slope(), 0.323, 3);
    nearly(fit.slope(), 0.323191388);
    nearly(
        Math.exp(fit.slope() * (Thermal.arrheniusCovariate(35) - Thermal.arrheniusCovariate(70))),
        3.46042523);
  }

  static Stream<Arguments> arrhenius() {
    return Stream.of(
        Arguments.of("nist", -19.1733862, 0.851181453, 1.55982464, 105, 1040.37306, -483.532124),
        Arguments.of("H", -5.87311507, 0.594276093, 3.92172916, 220, 3331.05143, -318.052033),
        Arguments.of("B", -13.3530032, 0.837939062, 3.07272251, 170, 5375.63772, -146.254296),
        Arguments.of("A", -13.3168325, 0.633824717, 1.41445985, 60, 6380.49898, -323.618710),
        Arguments.of("IC", -10.5336718, 0.855790046, 2.28478420, 250, 4672.59966, -89.9304034));
  }

  @ParameterizedTest
  @MethodSource("arrhenius")
  void weibullArrhenius_publishedData_referenceFit(
      String set, double b0, double energy, double shape, double at, double life, double logLik) {
    Maximum fit = fit(Family.WEIBULL, data(set, Thermal::arrheniusCovariate));
    nearly(fit.intercept(), b0);
    nearly(fit.slope(), energy);
    nearly(fit.shape(), shape);
    nearly(Math.exp(fit.intercept() + fit.slope() * Thermal.arrheniusCovariate(at)), life);
    nearly(fit.logLikelihood(), logLik);
  }

  static Stream<Arguments> arrheniusErrors() {
    return Stream.of(
        Arguments.of("nist", 2.7214, 0.0902044, 0.0980141697),
        Arguments.of("H", 0.660668, 0.0282542, 0.115946788),
        Arguments.of("B", 1.50057, 0.0599978, 0.210084063),
        Arguments.of("A", 3.31313, 0.0968913, 0.145522298),
        Arguments.of("IC", 2.01393, 0.0977613, 0.114430896));
  }

  @ParameterizedTest
  @MethodSource("arrheniusErrors")
  void weibullArrhenius_publishedData_referenceErrors(
      String set, double b0, double energy, double logScale) {
    Maximum fit = fit(Family.WEIBULL, data(set, Thermal::arrheniusCovariate));
    relatively(fit.standardError(0), b0, 1e-5);
    relatively(fit.standardError(1), energy, 1e-5);
    nearly(fit.standardError(2), logScale);
  }

  static Stream<Arguments> halving() {
    return Stream.of(
        Arguments.of("nist", 105, 6.98388680, -0.0679354237, 10.2030302, 1.56082750, -484.665938),
        Arguments.of("H", 220, 8.15672803, -0.0279349527, 24.8128997, 3.67695774, -320.576845),
        Arguments.of("B", 170, 8.61632029, -0.0453070535, 15.2988801, 2.99109905, -147.365061),
        Arguments.of("A", 60, 8.81439532, -0.0663101120, 10.4531143, 1.42640210, -323.614780),
        Arguments.of("IC", 250, 8.45054897, -0.0331448492, 20.9126666, 2.28613884, -89.9430387));
  }

  @ParameterizedTest
  @MethodSource("halving")
  void weibullHalving_publishedData_referenceFit(
      String set, double at, double b0, double slope, double h, double shape, double logLik) {
    Maximum fit = fit(Family.WEIBULL, data(set, celsius -> celsius - at));
    nearly(fit.intercept(), b0);
    nearly(fit.slope(), slope);
    nearly(fit.halvingKelvin().orElseThrow(), h);
    nearly(fit.shape(), shape);
    nearly(fit.logLikelihood(), logLik);
  }

  static Stream<Arguments> halvingErrors() {
    return Stream.of(
        Arguments.of(
            "nist",
            105,
            0.00711303,
            1.06829,
            0.0981069479,
            -0.000362399075,
            0.00398029106,
            -0.000444079596),
        Arguments.of(
            "H",
            220,
            0.00139326,
            1.23755,
            0.115997152,
            -1.09200913e-05,
            -0.00159953473,
            -2.71527053e-05),
        Arguments.of(
            "B",
            170,
            0.00318582,
            1.07576,
            0.214796643,
            -0.000237391010,
            0.0124243187,
            -0.000136419559),
        Arguments.of(
            "A",
            60,
            0.00997052,
            1.57175,
            0.145190739,
            -0.000735512237,
            0.0127815302,
            -0.00100850185),
        Arguments.of(
            "IC",
            250,
            0.00378106,
            2.38565,
            0.114299338,
            -0.000588092819,
            0.00959393680,
            -0.000226285876));
  }

  @ParameterizedTest
  @MethodSource("halvingErrors")
  void weibullHalving_publishedData_referenceErrors(
      String set,
      double at,
      double slope,
      double h,
      double logScale,
      double c01,
      double c02,
      double c12) {
    Maximum fit = fit(Family.WEIBULL, data(set, celsius -> celsius - at));
    relatively(fit.standardError(1), slope, 1e-5);
    relatively(fit.halvingStandardError().orElseThrow(), h, 1e-5);
    nearly(fit.standardError(2), logScale);
    nearly(fit.covariance().get(0).get(1), c01);
    nearly(fit.covariance().get(0).get(2), c02);
    nearly(fit.covariance().get(1).get(2), c12);
  }

  @Test
  void classH_lognormalArrhenius_referenceFit() {
    Maximum fit = fit(Family.LOGNORMAL, PublishedData.classH(Thermal::arrheniusCovariate));
    nearly(fit.intercept(), -7.28341121);
    nearly(fit.slope(), 0.649375743);
    nearly(fit.scale(), 0.249262909);
    nearly(fit.logLikelihood(), -313.558224);
  }

  @Test
  void oneTemperature_fit_noContrast() {
    assertThat(
            LifeRegression.onCovariate(Family.WEIBULL, PublishedData.nistCells(t -> 0, 105)).fit())
        .isEqualTo(new Fit.NoMaximum(Fit.Reason.NO_CONTRAST));
  }

  @Test
  void twoFailuresAtTwoTemperatures_fit_unbounded() {
    List<Observation> rows =
        new PublishedData(celsius -> celsius).at(220).failed(600).at(237).failed(200).rows();
    assertThat(LifeRegression.onCovariate(Family.WEIBULL, rows).fit())
        .isEqualTo(new Fit.NoMaximum(Fit.Reason.UNBOUNDED));
  }

  @Test
  void slope_likelihoodRatioInterval_endsLieOnTheCut() {
    List<Observation> rows = PublishedData.classH(celsius -> celsius - 220);
    LifeRegression regression = LifeRegression.onCovariate(Family.WEIBULL, rows);
    Maximum fit = (Maximum) regression.fit();
    Range range = regression.likelihoodRatio(fit, 1, 0.95);
    // Forty failures: the likelihood is nearly quadratic, so both intervals nearly agree.
    Range wald = fit.wald(1, 0.95);
    relatively(range.width(), wald.width(), 0.1);
    assertThat(range.low()).isLessThan(fit.slope());
    assertThat(range.high()).isGreaterThan(fit.slope());
  }

  private static List<Observation> data(String set, DoubleUnaryOperator covariate) {
    return switch (set) {
      case "nist" -> PublishedData.nistCells(covariate, 85, 105, 125);
      case "H" -> PublishedData.classH(covariate);
      case "B" -> PublishedData.classB(covariate);
      case "A" -> PublishedData.deviceA(covariate);
      default -> PublishedData.circuits(covariate, 150, 175, 200, 250, 300);
    };
  }
}
