package io.strapline.level.surface;

import io.strapline.level.internal.Check;

/**
 * The plan of a vessel's straight walls, about the vessel's axis. Immutable and safe for any
 * thread.
 */
public sealed interface Plan permits RoundPlan, RectangularPlan {

  /**
   * Part of the plan's size by which a place may lie outside and still count as at the wall, so
   * that a fill point given at the wall is not refused for a rounding error.
   */
  double SNAP = 1e-9;

  /** Returns the area in square metres, greater than zero. */
  double areaSquareMetres();

  /** Returns whether the place lies in the plan or on its edge, widened by {@link #SNAP}. */
  boolean contains(PlanPoint place);

  /**
   * Returns the mean distance in plan from a place to all places of the plan.
   *
   * @param from in the plan or on its edge
   * @return metres, greater than zero
   * @throws IllegalArgumentException if {@code from} lies outside
   */
  double meanDistanceMetres(PlanPoint from);

  /** Returns the greatest distance from a place to any place of the plan, in metres. */
  double greatestDistanceMetres(PlanPoint from);

  /**
   * Returns the distance from a place in the plan to the edge.
   *
   * @param from in the plan or on its edge
   * @param bearingRadians direction, anticlockwise from the x axis
   * @return metres, zero or greater
   */
  double toEdgeMetres(PlanPoint from, double bearingRadians);

  /** Returns the plan in a short English phrase. */
  String describe();

  /** Returns the place if it lies in the plan. */
  default PlanPoint require(String field, PlanPoint place) {
    Check.present(field, place, "give a place in the plan");
    if (!contains(place)) {
      throw Check.error(
          field,
          place.describe(),
          "m",
          "must lie in the plan (" + describe() + ")",
          "give it from the vessel's axis, in metres");
    }
    return place;
  }
}
