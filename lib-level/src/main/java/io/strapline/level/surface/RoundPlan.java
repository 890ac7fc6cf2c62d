package io.strapline.level.surface;

import io.strapline.level.internal.Check;

/**
 * A circle about the vessel's axis. Immutable.
 *
 * @param diameterMetres inside diameter, greater than zero
 */
public record RoundPlan(double diameterMetres) implements Plan {

  /** Checks the diameter. */
  public RoundPlan {
    Check.positive("RoundPlan.diameter", diameterMetres, "m", "give the inside diameter");
  }

  private double radius() {
    return diameterMetres / 2;
  }

  @Override
  public double areaSquareMetres() {
    return Math.PI * radius() * radius();
  }

  @Override
  public boolean contains(PlanPoint place) {
    return place.radiusMetres() <= radius() * (1 + SNAP);
  }

  /**
   * {@inheritDoc}
   *
   * <p>With e the distance of the place from the axis and k = e / R: 4 / (9 pi R) [(7 R^2 + e^2)
   * E(k) - 4 (R^2 - e^2) K(k)]; 2 R / 3 on the axis, 32 R / (9 pi) at the wall. The mean of 1 / (3
   * pi R^2) S(phi)^3 over all directions with S the distance to the wall (derived in docs/solids.md
   * from the mean in polar coordinates about the place); its closed form is from memory and held by
   * the check values and by quadrature in the tests.
   */
  @Override
  public double meanDistanceMetres(PlanPoint from) {
    require("RoundPlan.from", from);
    double r = radius();
    double e = Math.min(from.radiusMetres(), r);
    double within = (r - e) * (r + e);
    if (within == 0) {
      return 32 * r / (9 * Math.PI);
    }
    EllipticIntegrals.Pair integrals = EllipticIntegrals.of(e / r, Math.sqrt(within) / r);
    double sum = (7 * r * r + e * e) * integrals.second() - 4 * within * integrals.first();
    return 4 * sum / (9 * Math.PI * r);
  }

  @Override
  public double greatestDistanceMetres(PlanPoint from) {
    return radius() + from.radiusMetres();
  }

  @Override
  public double toEdgeMetres(PlanPoint from, double bearingRadians) {
    double ux = Math.cos(bearingRadians);
    double uy = Math.sin(bearingRadians);
    double along = from.xMetres() * ux + from.yMetres() * uy;
    double across = from.xMetres() * uy - from.yMetres() * ux;
    double half = Math.sqrt(Math.max((radius() - across) * (radius() + across), 0.0));
    return Math.max(half - along, 0.0);
  }

  @Override
  public String describe() {
    return "circle, diameter " + diameterMetres + " m";
  }
}
