package meltkeeper.life;

/**
 * An affine set of parameters θ = origin + basis · φ, over which a likelihood is maximised. It
 * carries both a constraint (a parameter held fixed) and the centring that keeps Newton's equations
 * well conditioned.
 */
final class Plane {

  private final double[] origin;
  private final double[][] basis;
  private final double[] start;

  /**
   * A plane.
   *
   * @param origin θ at φ = 0
   * @param basis one column of θ for each coordinate of φ, column first
   * @param start a φ to begin from
   */
  Plane(double[] origin, double[][] basis, double[] start) {
    this.origin = origin;
    this.basis = basis;
    this.start = start;
  }

  double[] start() {
    return start;
  }

  double[] theta(double[] phi) {
    double[] theta = origin.clone();
    for (int k = 0; k < basis.length; k++) {
      for (int i = 0; i < theta.length; i++) {
        theta[i] += phi[k] * basis[k][i];
      }
    }
    return theta;
  }

  double[] gradient(double[] full) {
    double[] gradient = new double[basis.length];
    for (int k = 0; k < basis.length; k++) {
      for (int i = 0; i < full.length; i++) {
        gradient[k] += basis[k][i] * full[i];
      }
    }
    return gradient;
  }

  double[][] hessian(double[][] full) {
    double[][] hessian = new double[basis.length][];
    for (int k = 0; k < basis.length; k++) {
      double[] column = new double[full.length];
      for (int i = 0; i < full.length; i++) {
        for (int j = 0; j < full.length; j++) {
          column[i] += full[i][j] * basis[k][j];
        }
      }
      hessian[k] = gradient(column);
    }
    return hessian;
  }
}
