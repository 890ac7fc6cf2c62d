package io.strapline.level.surface;

import io.strapline.level.internal.Check;

/**
 * A rectangle about the vessel's axis. Immutable.
 *
 * @param lengthMetres inside dimension along x, greater than zero
 * @param widthMetres inside dimension along y, greater than zero
 */
public record RectangularPlan(double lengthMetres, double widthMetres) implements Plan {

  /** Checks the dimensions. */
  public RectangularPlan {
    Check.positive("RectangularPlan.length", lengthMetres, "m", "give the inside dimension");
    Check.positive("RectangularPlan.width", widthMetres, "m", "give the inside dimension");
  }

  @Override
  public double areaSquareMetres() {
    return lengthMetres * widthMetres;
  }

  @Override
  public boolean contains(PlanPoint place) {
    return Math.abs(place.xMetres()) <= lengthMetres / 2 * (1 + SNAP)
        && Math.abs(place.yMetres()) <= widthMetres / 2 * (1 + SNAP);
  }

  /**
   * {@inheritDoc}
   *
   * <p>The sum over the four rectangles between the place and the corners, each (2 a b d + a^3
   * asinh(b/a) + b^3 asinh(a/b)) / 6 with d the diagonal, divided by the area. Derived in
   * docs/solids.md.
   */
  @Override
  public double meanDistanceMetres(PlanPoint from) {
    require("RectangularPlan.from", from);
    double east = Math.max(lengthMetres / 2 - from.xMetres(), 0.0);
    double west = Math.max(lengthMetres / 2 + from.xMetres(), 0.0);
    double north = Math.max(widthMetres / 2 - from.yMetres(), 0.0);
    double south = Math.max(widthMetres / 2 + from.yMetres(), 0.0);
    double sum = corner(east, north) + corner(east, south) + corner(west, north);
    return (sum + corner(west, south)) / areaSquareMetres();
  }

  /** Returns the integral of the distance from a corner over its rectangle. */
  private static double corner(double a, double b) {
    if (a == 0 || b == 0) {
      return 0;
    }
    return (2 * a * b * Math.hypot(a, b) + a * a * a * asinh(b / a) + b * b * b * asinh(a / b)) / 6;
  }

  private static double asinh(double x) {
    return Math.log(x + Math.sqrt(x * x + 1));
  }

  @Override
  public double greatestDistanceMetres(PlanPoint from) {
    return Math.hypot(
        lengthMetres / 2 + Math.abs(from.xMetres()), widthMetres / 2 + Math.abs(from.yMetres()));
  }

  @Override
  public double toEdgeMetres(PlanPoint from, double bearingRadians) {
    double ux = Math.cos(bearingRadians);
    double uy = Math.sin(bearingRadians);
    double alongX = toSide(from.xMetres(), ux, lengthMetres / 2);
    return Math.min(alongX, toSide(from.yMetres(), uy, widthMetres / 2));
  }

  private static double toSide(double position, double direction, double half) {
    if (direction == 0) {
      return Double.POSITIVE_INFINITY;
    }
    return Math.max((Math.copySign(half, direction) - position) / direction, 0.0);
  }

  @Override
  public String describe() {
    return "rectangle " + lengthMetres + " m x " + widthMetres + " m";
  }
}
