package io.strapline.level.vessel;

/**
 * A part cut off a sphere by an upright plane, filled from below: the spherical dish of a lying
 * tank, or the crown of a torispherical head. Immutable.
 *
 * <p>R is the radius of the rim, m the distance of the plane from the centre of the sphere, S =
 * sqrt (R^2 + m^2) its radius, y = R - depth. Derived here:
 *
 * <ul>
 *   <li>Slices square to the axis at X = distance from the centre of the sphere have the radius r =
 *       sqrt(S^2 - X^2) and hold a circular segment r^2 (u - sin u) / 2 with cos(u / 2) = y / r.
 *       With X = X0 cos d, X0 = sqrt(S^2 - y^2), it is tan(u / 2) = X0 sin d / y: nothing cancels.
 *       The integral over d from 0 to atan(sqrt(R^2 - y^2) / m) is analytic; the nearest singular
 *       point is r = 0. Up to a quarter of the rim's diameter r &gt;= 2.4, and 24 points leave
 *       1e-18.
 *   <li>From there on level slices are added: at height y they are segments of a circle of radius Q
 *       = sqrt(S^2 - y^2) cut at m, Q^2 (v - sin v) / 2 with tan(v / 2) = sqrt(R^2 - y^2) / m. The
 *       nearest singular points are y = -R and R, r &gt;= 5.8, and 16 points leave 1e-24.
 * </ul>
 *
 * <p>The closed forms in use for this shape lose their digits near empty and are not used.
 */
final class LyingCap {

  private static final GaussLegendre SLICES = new GaussLegendre(24);
  private static final GaussLegendre LEVELS = new GaussLegendre(16);

  private final double rim;
  private final double plane;
  private final double quarter;

  /**
   * Prepares the cap.
   *
   * @param rim R, metres, greater than zero
   * @param plane m, metres, zero or greater
   */
  LyingCap(double rim, double plane) {
    this.rim = rim;
    this.plane = plane;
    quarter = slices(rim / 2);
  }

  /** Returns the volume below a depth above the lowest point of the rim, in [0, R]. */
  double lower(double depth) {
    if (depth <= 0) {
      return 0;
    }
    if (depth <= rim / 2) {
      return Math.min(slices(depth), quarter);
    }
    return quarter + LEVELS.integrate(this::areaAt, Math.max(rim - depth, 0.0), rim / 2);
  }

  private double slices(double depth) {
    double y = rim - depth;
    double chord = Math.sqrt(depth * (2 * rim - depth));
    double reach = Math.hypot(plane, chord);
    double sum =
        SLICES.integrate(
            d -> {
              double sine = Math.sin(d);
              double half = reach * sine;
              double u = 2 * Math.atan2(half, y);
              return (y * y + half * half) * CircleSegment.angleLessSine(u) * sine;
            },
            0,
            Math.atan2(chord, plane));
    return reach / 2 * sum;
  }

  /** Returns the area of the level section at height y above or below the axis, |y| at most R. */
  double areaAt(double y) {
    double square = Math.max((rim - y) * (rim + y), 0.0);
    double v = 2 * Math.atan2(Math.sqrt(square), plane);
    return (square + plane * plane) * CircleSegment.angleLessSine(v) / 2;
  }
}
