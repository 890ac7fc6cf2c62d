package io.strapline.level.surface;

import io.strapline.level.vessel.Rectangle;

/**
 * The inside of a vessel cut level at one height: a circle or a rectangle about the axis.
 *
 * @param round whether it is a circle; both halves are then its radius
 * @param halfX half the size along x, metres, zero or greater
 * @param halfY half the size along y, metres, zero or greater
 */
record Outline(boolean round, double halfX, double halfY) {

  static Outline circle(double diameterMetres) {
    return new Outline(true, diameterMetres / 2, diameterMetres / 2);
  }

  static Outline of(Rectangle rectangle) {
    return new Outline(false, rectangle.lengthMetres() / 2, rectangle.widthMetres() / 2);
  }

  /** Returns whether the other one of the same form lies in this one. */
  boolean encloses(Outline other) {
    return other.halfX <= halfX && other.halfY <= halfY;
  }

  /** Returns whether the place lies in it, widened a little. */
  boolean contains(double x, double y) {
    double slack = 1 + Plan.SNAP;
    return round
        ? Math.hypot(x, y) <= halfX * slack
        : Math.abs(x) <= halfX * slack && Math.abs(y) <= halfY * slack;
  }

  /** Returns the plan; both halves must be greater than zero. */
  Plan plan() {
    return round ? new RoundPlan(2 * halfX) : new RectangularPlan(2 * halfX, 2 * halfY);
  }
}
