package io.strapline.level.vessel;

/**
 * A cone with its apex on the axis.
 *
 * <p>Standing, V = (distance from the apex / depth)^3 of the whole. Lying, derived here: with y = R
 * - h and slices of radius r = R (1 - x / a), V = a / R times the integral over r from y to R of
 * r^2 (u - sin u) / 2, the circular segment with cos(u / 2) = y / r. With e = y / R it comes to a
 * R^2 [acos(e) / 3 - 2/3 e sqrt(1 - e^2) + e^3 / 3 acosh(1 / e)]. That form loses all digits near
 * empty, so up to a quarter of the diameter the integral is worked out over w = sqrt(r - y), in
 * which it is even and analytic; the nearest singular points w^2 = -y lie at least as far off as
 * the interval is long, r = 1 + sqrt 2, and 32 points leave 1e-24 of the value.
 *
 * @param diameter of the shell
 * @param depth of the head
 */
record ConeForm(double diameter, double depth) implements HeadForm {

  private static final GaussLegendre POINTS = new GaussLegendre(32);

  @Override
  public double volume() {
    return Math.PI / 12 * diameter * diameter * depth;
  }

  @Override
  public double nearApex(double distance) {
    return volume() * UnitCubics.three(distance / depth);
  }

  @Override
  public double nearRim(double distance) {
    return volume() * UnitCubics.atLeastOne(distance / depth);
  }

  @Override
  public double apexReach() {
    return depth / 2;
  }

  @Override
  public double areaNearApex(double distance) {
    double part = distance / depth;
    return Math.PI / 4 * diameter * diameter * part * part;
  }

  @Override
  public double lowerLying(double liquid) {
    double quarter = diameter / 4;
    if (liquid <= quarter) {
      return Math.min(byQuadrature(liquid), byClosedForm(quarter));
    }
    return byClosedForm(liquid);
  }

  private double byQuadrature(double liquid) {
    double y = diameter / 2 - liquid;
    double slices =
        POINTS.integrateEven(
            w -> {
              double r = y + w * w;
              double u = 2 * Math.atan2(w * Math.sqrt(w * w + 2 * y), y);
              return r * r * CircleSegment.angleLessSine(u) * w;
            },
            Math.sqrt(liquid));
    return 2 * depth / diameter * slices;
  }

  private double byClosedForm(double liquid) {
    double radius = diameter / 2;
    double e = Math.max((radius - liquid) / radius, 0.0);
    double s = Math.sqrt(liquid * (diameter - liquid)) / radius;
    double cubic = e == 0 ? 0 : e * e * e / 3 * Math.log((1 + s) / e);
    return depth * radius * radius * (Math.atan2(s, e) / 3 - 2 / 3.0 * e * s + cubic);
  }

  /** The plane cuts the cone in a hyperbola: a / R [R sqrt(R^2 - y^2) - y^2 acosh(R / y)]. */
  @Override
  public double surfaceLying(double liquid) {
    double radius = diameter / 2;
    double y = Math.abs(radius - liquid);
    double s = Math.sqrt(liquid * (diameter - liquid));
    double curve = y == 0 ? 0 : y * y * Math.log((radius + s) / y);
    return depth / radius * Math.max(radius * s - curve, 0.0);
  }
}
