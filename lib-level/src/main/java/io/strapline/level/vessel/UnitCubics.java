package io.strapline.level.vessel;

/**
 * The three cubics that rise from 0 at 0 to 1 at 1, from which the volumes of frustums, hoppers and
 * spheres are put together. Stateless.
 *
 * <p>They are the sums of the cubic Bernstein polynomials from the k-th on: with s = 1 - t, {@code
 * atLeastOne} = 1 - s^3, {@code atLeastTwo} = t^2 (3 - 2t), {@code three} = t^3 (the chance that of
 * three things, each of chance t, so many happen).
 *
 * <p>Why so much care with rounding: a volume must never fall when the height rises, not even in
 * its last bit, and must keep all its digits near empty. Each function is computed nearly as if
 * without rounding and rounded once, or as one minus such a value; both never fall.
 */
final class UnitCubics {

  private UnitCubics() {}

  /**
   * Returns 1 - (1 - t)^3.
   *
   * @param t in [0, 1]
   */
  static double atLeastOne(double t) {
    // 1 - t is exact from one half on.
    return t < 0.5 ? threeMinusThree(t) : 1 - three(1 - t);
  }

  /**
   * Returns t^2 (3 - 2t), also the filled part of a sphere at the filled part t of its diameter.
   *
   * @param t in [0, 1]
   */
  static double atLeastTwo(double t) {
    return t <= 0.5 ? smooth(t) : 1 - smooth(1 - t);
  }

  /**
   * Returns t^3.
   *
   * @param t in [0, 1]
   */
  static double three(double t) {
    return t * t * t;
  }

  /** Returns t (3 - 3t + t^2): each rounding error is caught and added back in the end. */
  private static double threeMinusThree(double t) {
    double triple = 3 * t;
    double tripleError = errorOfProduct(3, t, triple);
    double square = t * t;
    double squareError = errorOfProduct(t, t, square);
    double left = 3 - triple;
    double leftError = (3 - left) - triple;
    // left is over 1.5 and square under 0.25 here, which the short form of the error needs.
    double sum = left + square;
    double sumError = square - (sum - left);
    double error = sumError + leftError - tripleError + squareError;
    double product = t * sum;
    return product + (errorOfProduct(t, sum, product) + t * error);
  }

  private static double smooth(double t) {
    double square = t * t;
    double squareError = errorOfProduct(t, t, square);
    double left = 3 - 2 * t;
    double leftError = (3 - left) - 2 * t;
    double product = square * left;
    double error = errorOfProduct(square, left, product);
    return product + (error + squareError * left + square * leftError);
  }

  /**
   * Returns a b - fl(a b) exactly (Dekker 1971, with Veltkamp's splitting). {@code Math.fma} would
   * do, but takes a detour of microseconds on processors without that instruction.
   */
  private static double errorOfProduct(double a, double b, double product) {
    double aHigh = high(a);
    double aLow = a - aHigh;
    double bHigh = high(b);
    double bLow = b - bHigh;
    return aLow * bLow - (product - aHigh * bHigh - aLow * bHigh - aHigh * bLow);
  }

  private static double high(double x) {
    double shifted = 134_217_729 * x; // 2^27 + 1
    return shifted - (shifted - x);
  }
}
