package meltkeeper.life;

import java.util.Optional;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/** Newton's method with step halving for a concave likelihood on a {@link Plane}. */
final class ConcaveAscent {

  private static final int MAX_STEPS = 200;
  private static final double STEEPEST = 1e7;

  /** Below this rise (Newton's decrement) the full step is right, and values no longer tell. */
  private static final double NEARLY_THERE = 1e-8;

  private static final double THERE = 1e-20;

  /**
   * Where the ascent ended.
   *
   * @param theta the maximum
   * @param covariance inverse of the negative Hessian, in coordinates of the plane
   */
  record Top(RealVector theta, double value, RealMatrix covariance) {}

  private ConcaveAscent() {}

  /** The maximum; empty when the likelihood rises without end on the plane. */
  static Optional<Top> climb(ConcaveLikelihood likelihood, Plane plane) {
    double[] phi = plane.start().clone();
    ConcaveLikelihood.Jet jet = likelihood.at(plane.theta(phi));
    for (int step = 0; step < MAX_STEPS; step++) {
      double[] gradient = plane.gradient(jet.gradient);
      Optional<CholeskyDecomposition> solver = solver(plane.hessian(jet.hessian));
      if (solver.isEmpty()) {
        return Optional.empty();
      }
      double[] direction =
          solver.get().getSolver().solve(new ArrayRealVector(gradient, false)).toArray();
      double rise = dot(gradient, direction);
      if (rise < THERE) {
        return Optional.of(
            new Top(
                new ArrayRealVector(plane.theta(phi), false),
                jet.value,
                solver.get().getSolver().getInverse()));
      }
      Optional<double[]> next =
          rise < NEARLY_THERE
              ? Optional.of(moved(phi, direction, 1))
              : higher(likelihood, plane, phi, direction, jet.value);
      if (next.isEmpty()) {
        return Optional.empty();
      }
      phi = next.get();
      double[] theta = plane.theta(phi);
      if (!(theta[0] < STEEPEST)) {
        return Optional.empty();
      }
      jet = likelihood.at(theta);
    }
    return Optional.empty();
  }

  private static Optional<CholeskyDecomposition> solver(double[][] hessian) {
    try {
      return Optional.of(
          new CholeskyDecomposition(
              MatrixUtils.createRealMatrix(hessian).scalarMultiply(-1), 1e-6, 1e-13));
    } catch (MathRuntimeException notConcaveEnough) {
      return Optional.empty();
    }
  }

  private static Optional<double[]> higher(
      ConcaveLikelihood likelihood, Plane plane, double[] phi, double[] direction, double value) {
    for (double share = 1; share > 1e-12; share /= 2) {
      double[] trial = moved(phi, direction, share);
      double[] theta = plane.theta(trial);
      if (theta[0] > 0 && likelihood.at(theta).value > value) {
        return Optional.of(trial);
      }
    }
    return Optional.empty();
  }

  private static double[] moved(double[] phi, double[] direction, double share) {
    double[] moved = phi.clone();
    for (int i = 0; i < moved.length; i++) {
      moved[i] += share * direction[i];
    }
    return moved;
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}
