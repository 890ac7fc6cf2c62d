package io.strapline.level.surface;

import io.strapline.level.internal.Check;

/**
 * A place in the plan of a vessel, seen from above. Immutable.
 *
 * @param xMetres from the vessel's axis along azimuth 0; finite
 * @param yMetres from the vessel's axis along azimuth 90 degrees; finite
 */
public record PlanPoint(double xMetres, double yMetres) {

  /** The vessel's upright axis. */
  public static final PlanPoint CENTRE = new PlanPoint(0, 0);

  /** Checks both numbers. */
  public PlanPoint {
    xMetres = Check.finite("PlanPoint.x", xMetres, "m", "give the distance from the axis");
    yMetres = Check.finite("PlanPoint.y", yMetres, "m", "give the distance from the axis");
  }

  /**
   * Returns the place at a radius and an azimuth.
   *
   * @param radiusMetres from the vessel's axis, zero or greater
   * @param azimuthDegrees anticlockwise from the x axis seen from above, in [-360, 360]
   */
  public static PlanPoint polar(double radiusMetres, double azimuthDegrees) {
    Check.notNegative("PlanPoint.radius", radiusMetres, "m", "give the distance from the axis");
    Check.between(
        "PlanPoint.azimuth",
        azimuthDegrees,
        "deg",
        -360,
        360,
        "give the angle anticlockwise from the x axis");
    double azimuth = Math.toRadians(azimuthDegrees);
    return new PlanPoint(radiusMetres * Math.cos(azimuth), radiusMetres * Math.sin(azimuth));
  }

  /** Returns the distance from the vessel's axis in metres. */
  public double radiusMetres() {
    return Math.hypot(xMetres, yMetres);
  }

  /** Returns the distance to another place in metres. */
  public double distanceMetres(PlanPoint other) {
    return Math.hypot(xMetres - other.xMetres, yMetres - other.yMetres);
  }

  String describe() {
    return "(" + xMetres + ", " + yMetres + ")";
  }
}
