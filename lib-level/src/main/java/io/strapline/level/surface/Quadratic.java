package io.strapline.level.surface;

/** Roots of a quadratic without cancellation. Stateless. */
final class Quadratic {

  private Quadratic() {}

  /**
   * Returns the real roots of a s^2 + 2 b s + c = 0. With q = -(b + sign(b) root(b^2 - a c)) they
   * are q / a and c / q: Press and others, Numerical Recipes, section "Quadratic and Cubic
   * Equations".
   */
  static double[] roots(double a, double b, double c) {
    double discriminant = b * b - a * c;
    if (!(discriminant >= 0)) {
      return new double[0];
    }
    double q = -(b + Math.copySign(Math.sqrt(discriminant), b));
    if (q == 0) {
      return new double[] {0};
    }
    return a == 0 ? new double[] {c / q} : new double[] {q / a, c / q};
  }
}
