package io.strapline.level.surface;

import io.strapline.level.internal.Check;

/**
 * An obstacle around one place. Immutable.
 *
 * @param name not blank
 * @param centre in plan
 * @param heightMetres of the centre above the datum; finite
 * @param radiusMetres zero or greater
 */
public record BallObstacle(String name, PlanPoint centre, double heightMetres, double radiusMetres)
    implements Obstacle {

  /** Checks the fields. */
  public BallObstacle {
    Check.text("BallObstacle.name", name, "name the obstacle");
    Check.present("BallObstacle.centre", centre, "give the place in plan");
    heightMetres = Check.finite("BallObstacle.height", heightMetres, "m", "give the height");
    radiusMetres =
        Check.notNegative("BallObstacle.radius", radiusMetres, "m", "give the size around it");
  }

  @Override
  public double distanceMetres(PlanPoint place, double height) {
    double apart = Math.hypot(centre.distanceMetres(place), height - heightMetres);
    return Math.max(apart - radiusMetres, 0.0);
  }
}
