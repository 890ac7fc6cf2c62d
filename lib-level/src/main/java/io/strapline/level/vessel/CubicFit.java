package io.strapline.level.vessel;

import java.util.function.DoubleUnaryOperator;

/**
 * A cubic through four points of a curve over a short interval [0, width], in the form v + x (c1 +
 * x (c2 + x c3)), and how far it strays. Immutable.
 *
 * <p>The inner points lie at (1 -+ tan(pi/8)) / 2 of the width: with both ends given, these are the
 * zeros of the stretched Chebyshev polynomial of degree 4, which strays least.
 *
 * @param v volume at 0
 * @param c1 slope at 0
 * @param c2 second coefficient
 * @param c3 third coefficient
 * @param deviation greatest difference from the curve at the check points
 */
record CubicFit(double v, double c1, double c2, double c3, double deviation) {

  /** Points at which a fit is compared with the curve. */
  private static final int CHECKS = 8;

  private static final double INNER = (1 - Math.tan(Math.PI / 8)) / 2;

  /** A cubic whose slope leaves this part of its mean is not taken. */
  private static final double LEAST_SLOPE = 0.5;

  private static final int TRIMS = 12;

  /** Returns the cubic over the interval, held to a straight line where it does not surely rise. */
  static CubicFit of(DoubleUnaryOperator curve, double width) {
    CubicFit cubic = cubic(curve, width);
    return cubic.surelyMonotone(width) ? cubic : line(curve, width);
  }

  private static CubicFit line(DoubleUnaryOperator curve, double width) {
    double v = curve.applyAsDouble(0);
    double end = curve.applyAsDouble(width);
    return trimmed(new CubicFit(v, (end - v) / width, 0, 0, 0), end, curve, width);
  }

  private static CubicFit cubic(DoubleUnaryOperator curve, double width) {
    double near = INNER * width;
    double far = (1 - INNER) * width;
    double v = curve.applyAsDouble(0);
    double end = curve.applyAsDouble(width);
    // Divided differences over 0, near, far and width.
    double first = (curve.applyAsDouble(near) - v) / near;
    double second = (curve.applyAsDouble(far) - v) / far;
    double third = (end - v) / width;
    double bend = (second - first) / (far - near);
    double c3 = ((third - second) / (width - far) - bend) / (width - near);
    double c2 = bend - c3 * (near + far);
    double c1 = first - near * (c2 + near * c3);
    return trimmed(new CubicFit(v, c1, c2, c3, 0), end, curve, width);
  }

  /** Lowers the slope by rounding errors until the end does not pass the next cell's start. */
  private static CubicFit trimmed(
      CubicFit fit, double end, DoubleUnaryOperator curve, double width) {
    double direction = Math.signum(end - fit.v);
    CubicFit trimmed = fit;
    for (int i = 0; i < TRIMS && direction * (trimmed.at(width) - end) > 0; i++) {
      double less = direction * (1 << i) * Math.ulp(Math.max(end, fit.v)) / width;
      trimmed = new CubicFit(fit.v, fit.c1 - less, fit.c2, fit.c3, 0);
    }
    if (direction * (trimmed.at(width) - end) > 0 || trimmed.c1 * direction < 0) {
      trimmed = new CubicFit(fit.v, 0, 0, 0, 0);
    }
    return trimmed.checked(curve, width);
  }

  private CubicFit checked(DoubleUnaryOperator curve, double width) {
    double worst = 0;
    for (int i = 0; i < CHECKS; i++) {
      double x = width * (i + 0.5) / CHECKS;
      worst = Math.max(worst, Math.abs(at(x) - curve.applyAsDouble(x)));
    }
    worst = Math.max(worst, Math.abs(at(width) - curve.applyAsDouble(width)));
    return new CubicFit(v, c1, c2, c3, worst);
  }

  double at(double x) {
    return v + x * (c1 + x * (c2 + x * c3));
  }

  /** Returns whether the slope stays near its mean, so that rounding cannot turn it. */
  private boolean surelyMonotone(double width) {
    double mean = (at(width) - v) / width;
    double turning = c3 == 0 ? 0 : Math.min(Math.max(-c2 / (3 * c3), 0), width);
    return near(mean, 0) && near(mean, turning) && near(mean, width);
  }

  private boolean near(double mean, double x) {
    double slope = c1 + x * (2 * c2 + x * 3 * c3);
    return mean != 0 && slope / mean >= LEAST_SLOPE && slope / mean <= 1 / LEAST_SLOPE;
  }
}
