package io.strapline.level.table;

/**
 * Slopes of a monotone cubic curve through the rows of a table, by F. N. Fritsch and R. E. Carlson,
 * "Monotone piecewise cubic interpolation", SIAM J. Numer. Anal. 17 (1980). With {@code alpha} and
 * {@code beta} the slopes at the ends of a piece divided by its secant, a piece is monotone exactly
 * when {@code 2 alpha + beta <= 3}, or {@code alpha + 2 beta <= 3}, or {@code alpha - (2 alpha +
 * beta - 3)^2 / (3 (alpha + beta - 2)) >= 0}. Where it is not, both are cut back along the ray to
 * the circle of radius 3. Pieces are worked through from the lowest on.
 */
final class FritschCarlson {

  private static final double RADIUS = 3;

  private FritschCarlson() {}

  /** Returns the slope at each row. */
  static double[] slopes(double[] heights, double[] volumes) {
    double[] secants = new double[heights.length - 1];
    for (int i = 0; i < secants.length; i++) {
      secants[i] = (volumes[i + 1] - volumes[i]) / (heights[i + 1] - heights[i]);
    }
    double[] slopes = start(secants);
    for (int i = 0; i < secants.length; i++) {
      limit(slopes, i, secants[i]);
    }
    return slopes;
  }

  private static double[] start(double[] secants) {
    double[] slopes = new double[secants.length + 1];
    slopes[0] = secants[0];
    for (int i = 1; i < secants.length; i++) {
      slopes[i] = (secants[i - 1] + secants[i]) / 2;
    }
    slopes[secants.length] = secants[secants.length - 1];
    return slopes;
  }

  private static void limit(double[] slopes, int piece, double secant) {
    if (secant == 0) {
      slopes[piece] = 0;
      slopes[piece + 1] = 0;
      return;
    }
    double alpha = slopes[piece] / secant;
    double beta = slopes[piece + 1] / secant;
    if (!isMonotone(alpha, beta)) {
      double cut = RADIUS / Math.hypot(alpha, beta);
      slopes[piece] = cut * alpha * secant;
      slopes[piece + 1] = cut * beta * secant;
    }
  }

  private static boolean isMonotone(double alpha, double beta) {
    double excess = 2 * alpha + beta - 3;
    return excess <= 0
        || alpha + 2 * beta - 3 <= 0
        || alpha - excess * excess / (3 * (alpha + beta - 2)) >= 0;
  }
}
