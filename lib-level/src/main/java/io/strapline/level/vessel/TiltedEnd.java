package io.strapline.level.vessel;

/**
 * Half a spheroid at the lower end of a tilted tank, filled by a level surface. Immutable.
 *
 * <p>Derived here. Stretched by R / a along its axis the head becomes half a ball of radius R, and
 * the surface a plane that makes the angle b with the axis, tan b = a / R tan(tilt). At a distance
 * p from the centre the plane cuts the ball in a circle of radius q = sqrt(R^2 - p^2), of which the
 * base of the head cuts off what lies on the shell's side: a segment with cos(u / 2) = -p tan b /
 * q.
 *
 * <ul>
 *   <li>p &lt; -R cos b: the surface has not reached the shell; a spherical cap pi g^2 (3R - g) /
 *       3, g = R + p.
 *   <li>|p| &lt; R cos b: the cap less what lies beyond the base, W = cap / 2 + (R^2 p - p^3 / 3)
 *       asin (p tan b / q) - 2/3 R^3 atan(R tan b / T) + sin b cos b (R^2 T - T^3) / 3 with T =
 *       sqrt(R^2 - p^2 / cos^2 b), by parts from W' = q^2 (u - sin u) / 2.
 *   <li>p &gt; R cos b: the head is full.
 * </ul>
 *
 * <p>W loses its digits near empty. Up to R / 20 above the rim it is summed up instead over s with
 * T = R tan b sinh s, in which it is even; the nearest singular points are +-i pi / 2, where it is
 * as small as at the start, and 96 points leave nothing even at the slightest tilt.
 *
 * <p>The head at the upper end is the mirror image: it holds W.
 */
final class TiltedEnd {

  private static final GaussLegendre POINTS = new GaussLegendre(96);

  /** Part of the radius above the rim up to which the shell's side counts as near empty. */
  private static final double NEAR_EMPTY = 0.05;

  private final double radius;
  private final double stretch;
  private final double sine;
  private final double cosine;

  /** Distance p at which the surface passes through the lowest point of the rim. */
  private final double rim;

  private final double quadratureTo;
  private final double nearEmpty;

  /**
   * Prepares the head.
   *
   * @param radius of the shell
   * @param depth of the head, zero for a flat one
   * @param slope tangent of the tilt, zero or greater
   */
  TiltedEnd(double radius, double depth, double slope) {
    this.radius = radius;
    stretch = depth / radius;
    double tangent = stretch * slope;
    cosine = 1 / Math.sqrt(1 + tangent * tangent);
    sine = tangent * cosine;
    rim = -radius * cosine;
    quadratureTo = radius * sine * sine / (1 + cosine) + NEAR_EMPTY * radius;
    nearEmpty = sine == 0 ? 0 : byClosedForm(quadratureTo);
  }

  /** Returns how much deeper than the rim the head reaches, square to the axis. */
  double below() {
    return radius * sine * sine / (cosine * (1 + cosine));
  }

  double volume() {
    return stretch * Math.PI * 2 / 3 * radius * radius * radius;
  }

  /**
   * Returns the filled volume of the head at the lower end.
   *
   * @param cap height g of the surface above the lowest point of the ball, square to the surface
   */
  double filledLow(double cap) {
    if (cap <= 0) {
      return 0;
    }
    double p = cap - radius;
    if (p >= -rim) {
      return volume();
    }
    return stretch * (p <= rim ? cap(cap) : cap(cap) - beyondBase(cap));
  }

  /** Returns the filled volume of the same head at the upper end. */
  double filledHigh(double cap) {
    double p = cap - radius;
    if (p <= rim) {
      return 0;
    }
    return p < -rim ? stretch * beyondBase(cap) : highAbove(cap);
  }

  /** The upper end's rim lies under the surface: only a cap at the top is empty. */
  private double highAbove(double cap) {
    return volume() - stretch * cap(Math.max(2 * radius - cap, 0.0));
  }

  private double cap(double g) {
    return Math.PI / 3 * g * g * (3 * radius - g);
  }

  private double beyondBase(double cap) {
    if (sine == 0) {
      return cap(cap) / 2;
    }
    if (cap <= quadratureTo) {
      return Math.min(byQuadrature(cap), nearEmpty);
    }
    return Math.max(byClosedForm(cap), nearEmpty);
  }

  private double byQuadrature(double cap) {
    double tangent = sine / cosine;
    double reach = Math.sqrt(Math.max(beyondRim(cap), 0.0)) / (radius * sine);
    double end = Math.log(reach + Math.hypot(1, reach));
    double sum =
        POINTS.integrateEven(
            s -> {
              double root = radius * tangent * Math.sinh(s);
              double p = cosine * Math.sqrt((radius - root) * (radius + root));
              double q = radius * sine * Math.cosh(s);
              double u = 2 * Math.atan2(root, p * tangent);
              double slope = root * radius * tangent * Math.cosh(s) / p;
              return q * q * CircleSegment.angleLessSine(u) * slope;
            },
            end);
    return cosine * cosine * sum / 2;
  }

  /** Returns cos^2 b T^2 = (p0 - |p|)(p0 + |p|), p0 = R cos b. */
  private double beyondRim(double cap) {
    double above = cap - radius * sine * sine / (1 + cosine);
    return above * (2 * radius - cap - radius * sine * sine / (1 + cosine));
  }

  private double byClosedForm(double cap) {
    double p = cap - radius;
    double square = radius * radius;
    double root = Math.sqrt(Math.max(beyondRim(cap), 0.0)) / cosine;
    double angle = Math.atan2(p * sine / cosine, root);
    double shell = 2 / 3.0 * square * radius * Math.atan2(radius * sine, root * cosine);
    double edge = sine * cosine / 3 * root * (square - root * root);
    return cap(cap) / 2 + (square * p - p * p * p / 3) * angle - shell + edge;
  }

  /** Returns the area of the cut through the lower end's head, stretched back. */
  double areaLow(double cap) {
    double p = cap - radius;
    if (cap <= 0 || p >= -rim) {
      return 0;
    }
    return stretch * (circle(cap) - (p <= rim ? 0 : segment(cap)));
  }

  /** Returns the area of the cut through the upper end's head, stretched back. */
  double areaHigh(double cap) {
    double p = cap - radius;
    if (p <= rim || cap >= 2 * radius) {
      return 0;
    }
    return stretch * (p < -rim ? segment(cap) : circle(cap));
  }

  private double circle(double cap) {
    return Math.PI * cap * (2 * radius - cap);
  }

  private double segment(double cap) {
    double p = cap - radius;
    double root = Math.sqrt(Math.max(beyondRim(cap), 0.0)) / cosine;
    double u = 2 * Math.atan2(root, -p * sine / cosine);
    return cap * (2 * radius - cap) * CircleSegment.angleLessSine(u) / 2;
  }

  /** Returns how far p moves when the surface rises by one, square to the axis. */
  double pace() {
    return cosine;
  }
}
