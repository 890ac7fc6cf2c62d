package io.strapline.level.vessel;

/**
 * The straight part of a tilted tank, filled by a level surface. Immutable.
 *
 * <p>The depth square to the axis falls along the shell by tan(tilt) each metre. Where it lies
 * between 0 and D, V is the integral of the circular segment over the length; with depth = R (1 -
 * cos a) it is R^3 / tan(tilt) times the integral of (a - sin a cos a) sin a over a. The integrand
 * has no singular point at all, so 16 points leave nothing, and the interval is taken from the
 * difference of the depths, so that no digits are lost when the tilt is small. Where the shell is
 * full it holds pi R^2 each metre.
 */
final class TiltedShell {

  private static final GaussLegendre POINTS = new GaussLegendre(16);

  /** Below this difference of two angles their direct difference is not exact enough. */
  private static final double NEAR = 0.1;

  private final double radius;
  private final double length;
  private final double slope;

  TiltedShell(double radius, double length, double slope) {
    this.radius = radius;
    this.length = length;
    this.slope = slope;
  }

  /** Returns the filled volume at a depth at the lower end; the depth may lie beyond the shell. */
  double filled(double depth) {
    double over = depth - 2 * radius;
    double full =
        slope == 0 ? (over >= 0 ? length : 0) : Math.min(Math.max(over / slope, 0), length);
    double slices = along(depth, a -> CircleSegment.angleLessSine(2 * a) / 2, radius * radius);
    return Math.PI * radius * radius * full + slices;
  }

  /** Returns the free surface, projected along the axis. */
  double surface(double depth) {
    return along(depth, a -> 2 * Math.sin(a), radius);
  }

  /** Integrates a function of the angle over the length where the surface cuts the shell. */
  private double along(
      double depth, java.util.function.DoubleUnaryOperator function, double factor) {
    double deep = Math.min(depth, 2 * radius);
    double shallow = Math.max(depth - length * slope, 0.0);
    if (deep <= 0 || shallow >= 2 * radius) {
      return 0;
    }
    double high = angle(deep);
    if (slope == 0) {
      return factor * length * function.applyAsDouble(high);
    }
    // Taken from the depths, a small drop would lose its digits.
    boolean inside = depth <= 2 * radius && shallow > 0;
    double drop = inside ? length * slope : deep - shallow;
    double width = width(high, angle(shallow), drop);
    double sum =
        POINTS.around(a -> function.applyAsDouble(a) * Math.sin(a), high - width / 2, width / 2);
    return factor * radius / slope * sum;
  }

  private double angle(double depth) {
    return 2 * Math.asin(Math.min(Math.sqrt(depth / (2 * radius)), 1));
  }

  /** The difference of the cosines is 2 sin(mean) sin(half of the difference). */
  private double width(double high, double low, double drop) {
    double direct = high - low;
    if (direct > NEAR || low == 0) {
      return direct;
    }
    double sine = drop / (2 * radius * Math.sin((high + low) / 2));
    return 2 * Math.asin(Math.min(sine, 1));
  }
}
