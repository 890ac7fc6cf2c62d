package io.strapline.level.surface;

/**
 * Something in a vessel that a beam must clear: ladder, stiffener, probe, filling stream. Its body
 * is convex. Immutable and safe for any thread.
 */
public sealed interface Obstacle permits BallObstacle, BoxObstacle, CylinderObstacle {

  /** Returns the name, which stands in results. */
  String name();

  /**
   * Returns the distance from a place in space to the body.
   *
   * @param place in plan
   * @param heightMetres above the datum
   * @return metres, zero inside
   */
  double distanceMetres(PlanPoint place, double heightMetres);
}
