package io.strapline.level.vessel;

import java.util.function.DoubleUnaryOperator;

/**
 * The Gauss-Legendre quadrature with a fixed number of points (Press et al., Numerical Recipes,
 * section 4.6). Immutable.
 *
 * <p>For a function that is analytic inside the ellipse with foci at both ends of the interval and
 * the sum r of its half axes (in half lengths of the interval), the error of n points is a small
 * multiple of r^(-2n) (Trefethen, Is Gauss Quadrature Better than Clenshaw-Curtis?, SIAM Review 50,
 * 2008, theorem 4.5). Who uses it states r. All weights are positive: no digits are lost when the
 * function has one sign.
 */
final class GaussLegendre {

  private static final int NEWTON_STEPS = 20;

  private final double[] nodes;
  private final double[] weights;

  /**
   * Prepares the nodes and weights.
   *
   * @param points two or more
   */
  GaussLegendre(int points) {
    nodes = new double[points];
    weights = new double[points];
    for (int i = 0; i < points; i++) {
      double x = -Math.cos(Math.PI * (i + 0.75) / (points + 0.5));
      double slope = 1;
      for (int step = 0; step < NEWTON_STEPS; step++) {
        double[] at = legendre(points, x);
        slope = at[1];
        x -= at[0] / slope;
      }
      nodes[i] = x;
      weights[i] = 2 / ((1 - x * x) * slope * slope);
    }
  }

  /** Returns the Legendre polynomial and its slope by the recurrence over the degree. */
  private static double[] legendre(int degree, double x) {
    double before = 1;
    double value = x;
    for (int k = 2; k <= degree; k++) {
      double next = ((2 * k - 1) * x * value - (k - 1) * before) / k;
      before = value;
      value = next;
    }
    return new double[] {value, degree * (x * value - before) / (x * x - 1)};
  }

  /** Returns the integral from {@code low} to {@code high}. */
  double integrate(DoubleUnaryOperator function, double low, double high) {
    return around(function, (low + high) / 2, (high - low) / 2);
  }

  /** Returns the integral from {@code middle - half} to {@code middle + half}. */
  double around(DoubleUnaryOperator function, double middle, double half) {
    double sum = 0;
    for (int i = 0; i < nodes.length; i++) {
      sum += weights[i] * function.applyAsDouble(middle + half * nodes[i]);
    }
    return half * sum;
  }

  /**
   * Returns the integral from 0 to {@code high} of a function that is even about 0: half of that
   * from {@code -high} on, with half of the points worked out. The number of points is even.
   */
  double integrateEven(DoubleUnaryOperator function, double high) {
    double sum = 0;
    for (int i = nodes.length / 2; i < nodes.length; i++) {
      sum += weights[i] * function.applyAsDouble(high * nodes[i]);
    }
    return high * sum;
  }
}
