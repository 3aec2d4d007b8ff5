package meltkeeper.life;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** Published life tables. Hours; each set names its source. */
final class PublishedData {

  private final List<Observation> rows = new ArrayList<>();
  private final DoubleUnaryOperator covariate;
  private double celsius;

  PublishedData(DoubleUnaryOperator covariateAtCelsius) {
    this.covariate = covariateAtCelsius;
  }

  /** Rows that follow were run at that temperature. */
  PublishedData at(double celsius) {
    this.celsius = celsius;
    return this;
  }

  PublishedData failed(double... hours) {
    for (double h : hours) {
      rows.add(new Observation.Failed(h, covariate.applyAsDouble(celsius), 1));
    }
    return this;
  }

  PublishedData survived(double hours, double count) {
    rows.add(new Observation.Survived(hours, covariate.applyAsDouble(celsius), count));
    return this;
  }

  PublishedData between(double after, double hours, double count) {
    rows.add(new Observation.Between(after, hours, covariate.applyAsDouble(celsius), count));
    return this;
  }

  List<Observation> rows() {
    return List.copyOf(rows);
  }

  /**
   * NIST/SEMATECH e-Handbook 8.4.1.3: ten failures, ten stopped at 500 h. The page has 54 h for the
   * first failure, its R listing 55 h.
   */
  static List<Observation> nist(double first) {
    return new PublishedData(celsius -> 0)
        .failed(first, 187, 216, 240, 244, 335, 361, 373, 375, 386)
        .survived(500, 10)
        .rows();
  }

  /** Diesel generator fans, Nelson 1982, as printed in the SAS/QC User's Guide. */
  static List<Observation> fans() {
    PublishedData fans =
        new PublishedData(celsius -> 0)
            .failed(450, 1150, 1150, 1600, 2070, 2070, 2080, 3100, 3450, 4600, 6100, 8750);
    double[][] survivors = {
      {460, 1}, {1560, 1}, {1660, 1}, {1850, 5}, {2030, 3}, {2200, 1}, {3000, 4}, {3200, 1},
      {3750, 2}, {4150, 4}, {4300, 4}, {4850, 4}, {5000, 3}, {6100, 3}, {6300, 1}, {6450, 2},
      {6700, 1}, {7450, 1}, {7800, 2}, {8100, 2}, {8200, 1}, {8500, 3}, {8750, 2}, {9400, 1},
      {9900, 1}, {10100, 3}, {11500, 1}
    };
    for (double[] survivor : survivors) {
      fans.survived(survivor[0], survivor[1]);
    }
    return fans.rows();
  }

  /** NIST/SEMATECH e-Handbook 8.4.2.2: three temperature cells. */
  static List<Observation> nistCells(DoubleUnaryOperator covariate, double... cells) {
    PublishedData data = new PublishedData(covariate);
    for (double cell : cells) {
      data.at(cell);
      if (cell == 85) {
        data.failed(401, 428, 695, 725, 738).survived(1000, 95);
      } else if (cell == 105) {
        data.failed(
                171, 187, 189, 266, 275, 285, 301, 302, 305, 316, 317, 324, 349, 350, 386, 405, 480,
                493, 530, 534, 536, 567, 589, 598, 599, 614, 620, 650, 668, 685, 718, 795, 854, 917,
                926)
            .survived(1000, 15);
      } else {
        data.failed(
                24, 42, 92, 93, 141, 142, 143, 159, 181, 188, 194, 199, 207, 213, 243, 256, 259,
                290, 294, 305, 392, 454, 502, 696)
            .survived(1000, 1);
      }
    }
    return data.rows();
  }

  /** Class H insulation, Nelson 1990 p. 115, as quoted by an open R package. */
  static List<Observation> classH(DoubleUnaryOperator covariate) {
    return new PublishedData(covariate)
        .at(190)
        .failed(7228, 7228, 7228, 8448, 9167, 9167, 9167, 9167, 10511, 10511)
        .at(220)
        .failed(1764, 2436, 2436, 2436, 2436, 2436, 3108, 3108, 3108, 3108)
        .at(240)
        .failed(1175, 1175, 1521, 1569, 1617, 1665, 1665, 1713, 1761, 1953)
        .at(260)
        .failed(600, 744, 744, 744, 912, 1128, 1320, 1464, 1608, 1896)
        .rows();
  }

  /** Class B motorettes without the cell at 150 °C, Nelson and Hahn 1972, as in MASS and SAS. */
  static List<Observation> classBHot(DoubleUnaryOperator covariate) {
    return new PublishedData(covariate)
        .at(170)
        .failed(1764, 2772, 3444, 3542, 3780, 4860, 5196)
        .survived(5448, 3)
        .at(190)
        .failed(408, 408, 1344, 1344, 1440)
        .survived(1680, 5)
        .at(220)
        .failed(408, 408, 504, 504, 504)
        .survived(528, 5)
        .rows();
  }

  /** Class B motorettes, all four cells. */
  static List<Observation> classB(DoubleUnaryOperator covariate) {
    List<Observation> rows =
        new ArrayList<>(new PublishedData(covariate).at(150).survived(8064, 10).rows());
    rows.addAll(classBHot(covariate));
    return rows;
  }

  /** Device-A, Meeker and Escobar 1998, ex. 19.5 p. 498, as reprinted. */
  static List<Observation> deviceA(DoubleUnaryOperator covariate) {
    return new PublishedData(covariate)
        .at(10)
        .survived(5000, 30)
        .at(40)
        .failed(1298, 1390, 3187, 3241, 3261, 3313, 4501, 4568, 4841, 4982)
        .survived(5000, 90)
        .at(60)
        .failed(581, 925, 1432, 1586, 2452, 2734, 2772, 4106, 4674)
        .survived(5000, 11)
        .at(80)
        .failed(283, 361, 515, 638, 854, 1024, 1030, 1045, 1767, 1777, 1856, 1951, 1964, 2884)
        .survived(5000, 1)
        .rows();
  }

  /** Integrated circuits looked at now and then, Meeker and Escobar 1998, ex. 19.11 p. 508. */
  static List<Observation> circuits(DoubleUnaryOperator covariate, double... cells) {
    PublishedData data = new PublishedData(covariate);
    for (double cell : cells) {
      data.at(cell);
      if (cell == 250) {
        data.between(384, 788, 1).between(788, 1536, 3).between(1536, 2304, 5).survived(2304, 41);
      } else if (cell == 300) {
        data.between(192, 384, 4).between(384, 788, 27).between(788, 1536, 16).survived(1536, 3);
      } else {
        data.survived(cell == 200 ? 96 : 1536, 50);
      }
    }
    return data.rows();
  }
}
