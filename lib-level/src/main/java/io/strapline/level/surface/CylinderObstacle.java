package io.strapline.level.surface;

import io.strapline.level.internal.Check;

/**
 * An upright round obstacle: pipe, rope, the stream of solids that falls from the inlet. Immutable.
 *
 * @param name not blank
 * @param axis in plan
 * @param radiusMetres zero or greater
 * @param span heights of its lower and upper end
 */
public record CylinderObstacle(String name, PlanPoint axis, double radiusMetres, HeightSpan span)
    implements Obstacle {

  /** Checks the fields. */
  public CylinderObstacle {
    Check.text("CylinderObstacle.name", name, "name the obstacle");
    Check.present("CylinderObstacle.axis", axis, "give the place in plan");
    Check.present("CylinderObstacle.span", span, "give both ends");
    radiusMetres =
        Check.notNegative("CylinderObstacle.radius", radiusMetres, "m", "give half the diameter");
  }

  /**
   * Returns the stream of solids under an inlet, as falling straight down. A stream that is thrown
   * sideways is wider: give a radius that holds it.
   */
  public static CylinderObstacle fillingStream(
      PlanPoint fillPoint, double radiusMetres, HeightSpan span) {
    return new CylinderObstacle("filling stream", fillPoint, radiusMetres, span);
  }

  @Override
  public double distanceMetres(PlanPoint place, double heightMetres) {
    double beside = Math.max(axis.distanceMetres(place) - radiusMetres, 0.0);
    return Math.hypot(beside, span.outsideMetres(heightMetres));
  }
}
