package io.strapline.level.surface;

import java.util.OptionalDouble;

/**
 * The upper surface of a filling: its height over each place, as if it went on through walls, floor
 * and roof, which cut it. Immutable and safe for any thread.
 */
public sealed interface Surface permits FlatSurface, PlaneSurface, ConeSurface, CraterSurface {

  /** Returns the height over a place, metres above the datum. */
  default double heightMetres(PlanPoint place) {
    return height(place.xMetres(), place.yMetres());
  }

  /** Returns the surface in a short English phrase. */
  String describe();

  /** Returns the height over a place, metres above the datum. */
  double height(double x, double y);

  /** Returns the steepest slope in radians, in [0, pi/2). */
  double steepestRadians();

  /** Returns a height that the surface does not exceed over the plan, reached but for a crater. */
  double highestMetres(Plan plan);

  /** Returns a height that the surface does not go below over the plan. */
  double lowestMetres(Plan plan);

  /**
   * Returns the mean height over the plan where it has a closed form, metres above the datum;
   * nothing otherwise.
   */
  OptionalDouble meanMetres(Plan plan);

  /**
   * Returns the distances along a beam at which it may pass through the surface, in any order; some
   * may be negative or not numbers.
   */
  double[] crossings(Beam beam);
}
