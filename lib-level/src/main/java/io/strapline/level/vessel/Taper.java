package io.strapline.level.vessel;

/**
 * The volume of a body whose level sections change from a bottom to a top figure along straight
 * lines: frustum of a cone, hopper between two rectangles. Immutable.
 *
 * <p>With t = height above the bottom / full height h, the area is A0 (1-t)^2 + 2 Am t (1-t) + A1
 * t^2. Derived here: a dimension at t is (1-t) times its bottom plus t times its top value, and an
 * area is a product of two such. Am is pi/4 d0 d1 for circles and (a0 b1 + a1 b0) / 2 for
 * rectangles. The integral over the height is h/3 [A0 (1-(1-t)^3) + Am t^2 (3-2t) + A1 t^3]; full,
 * it is h/3 (A0 + Am + A1), the prismatoid rule.
 *
 * @param height metres, greater than zero
 * @param bottomArea A0, square metres, zero or greater
 * @param mixedArea Am, square metres, zero or greater
 * @param topArea A1, square metres, zero or greater
 */
record Taper(double height, double bottomArea, double mixedArea, double topArea) {

  double volume() {
    return height / 3 * (bottomArea + mixedArea + topArea);
  }

  /** Returns the volume below z; the three terms rise with z, so the sum does. */
  double volumeBelow(double z) {
    double t = share(z);
    double areas =
        bottomArea * UnitCubics.atLeastOne(t)
            + mixedArea * UnitCubics.atLeastTwo(t)
            + topArea * UnitCubics.three(t);
    return height / 3 * areas;
  }

  double areaAt(double z) {
    double t = share(z);
    double s = 1 - t;
    return bottomArea * s * s + 2 * mixedArea * s * t + topArea * t * t;
  }

  /**
   * Returns the height of a volume as if the body were the frustum of a cone with these end areas;
   * exact for one. Derived here: with end radii r0 and r1, the radius at the filled part v of the
   * volume is r = cbrt(r0^3 + v (r1^3 - r0^3)), and t = (r - r0) / (r1 - r0) = v (r0^2 + r0 r1 +
   * r1^2) / (r0^2 + r0 r + r^2), which loses no digits.
   */
  double aboutHeightOf(double volume) {
    double r0 = Math.sqrt(bottomArea);
    double r1 = Math.sqrt(topArea);
    double part = Math.min(volume / volume(), 1);
    double r = Math.cbrt((1 - part) * r0 * r0 * r0 + part * r1 * r1 * r1);
    double t = part * (r0 * r0 + r0 * r1 + r1 * r1) / (r0 * r0 + r0 * r + r * r);
    return t >= 0 && t <= 1 ? t * height : part * height;
  }

  private double share(double z) {
    return Math.min(Math.max(z / height, 0.0), 1.0);
  }
}
