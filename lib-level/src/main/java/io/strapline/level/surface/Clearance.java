package io.strapline.level.surface;

/**
 * How near a beam passes an obstacle. Immutable.
 *
 * @param obstacle its name
 * @param clearMetres least gap between the edge of the beam and the obstacle; zero or less means
 *     that the beam touches it
 * @param distanceMetres along the beam, where it is nearest
 */
public record Clearance(String obstacle, double clearMetres, double distanceMetres) {

  private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;
  private static final int STEPS = 100;

  /**
   * Returns the clearance of a beam up to its end. The gap is convex along the beam, as the
   * distance of a line to a convex body less a half width that grows linearly, so golden-section
   * search finds its least value.
   */
  static Clearance of(Beam beam, double end, Obstacle obstacle) {
    double low = 0;
    double high = end;
    for (int i = 0; i < STEPS; i++) {
      double left = high - GOLDEN * (high - low);
      double right = low + GOLDEN * (high - low);
      if (gap(beam, obstacle, left) <= gap(beam, obstacle, right)) {
        high = right;
      } else {
        low = left;
      }
    }
    double nearest = (low + high) / 2;
    double least = gap(beam, obstacle, nearest);
    double atEnd = gap(beam, obstacle, end);
    return atEnd < least
        ? new Clearance(obstacle.name(), atEnd, end)
        : new Clearance(obstacle.name(), least, nearest);
  }

  private static double gap(Beam beam, Obstacle obstacle, double distance) {
    double apart = obstacle.distanceMetres(beam.placeAt(distance), beam.levelMetres(distance));
    return apart - beam.spread().widthMetres(distance) / 2;
  }
}
