package io.strapline.level.surface;

/**
 * The way of a beam through an empty vessel, section by section from the top. Stateless.
 *
 * <p>In each section the inside widens or narrows linearly with height, so the beam leaves a round
 * one at a root of a quadratic and a rectangular one at the first of four linear equations. Derived
 * here.
 */
final class BeamPath {

  private static final double NONE = Double.POSITIVE_INFINITY;

  private BeamPath() {}

  static BeamSpot spot(Beam beam, BeamTarget target, double distance) {
    return new BeamSpot(
        target,
        distance,
        beam.placeAt(distance),
        beam.levelMetres(distance),
        beam.spread().widthMetres(distance));
  }

  /** Returns where the beam ends; it must enter the vessel. */
  static BeamSpot end(SolidsVessel vessel, Beam beam) {
    for (int i = vessel.walls().size() - 1; i >= 0; i--) {
      WallSection wall = vessel.walls().get(i);
      if (beam.heightMetres() <= wall.bottomHeight()) {
        continue;
      }
      double enter = Math.max(beam.distanceMetres(wall.topHeight()), 0.0);
      if (enter > 0 && !contains(wall.top(), beam.placeAt(enter))) {
        return spot(beam, BeamTarget.FLOOR, enter);
      }
      double leave = leave(wall, beam, enter);
      if (leave <= beam.distanceMetres(wall.bottomHeight())) {
        return spot(beam, target(wall), leave);
      }
    }
    BeamTarget bottom = vessel.endsInOutlet() ? BeamTarget.OUTLET : BeamTarget.FLOOR;
    return spot(beam, bottom, beam.distanceMetres(0));
  }

  private static boolean contains(Outline outline, PlanPoint place) {
    return outline.contains(place.xMetres(), place.yMetres());
  }

  private static BeamTarget target(WallSection wall) {
    if (wall.straight()) {
      return BeamTarget.WALL;
    }
    return wall.widens() ? BeamTarget.HOPPER : BeamTarget.ROOF;
  }

  /** Returns the distance at which the beam leaves the section's walls; none if it does not. */
  private static double leave(WallSection wall, Beam beam, double enter) {
    return wall.bottom().round() ? leaveRound(wall, beam, enter) : leaveFlat(wall, beam, enter);
  }

  private static double leaveRound(WallSection wall, Beam beam, double enter) {
    double rate = (wall.top().halfX() - wall.bottom().halfX()) / wall.height();
    double r0 = wall.bottom().halfX() + rate * (beam.heightMetres() - wall.bottomHeight());
    double r1 = -rate * beam.down();
    double x = beam.position().xMetres();
    double y = beam.position().yMetres();
    double a = beam.alongX() * beam.alongX() + beam.alongY() * beam.alongY() - r1 * r1;
    double b = x * beam.alongX() + y * beam.alongY() - r0 * r1;
    double first = NONE;
    for (double root : Quadratic.roots(a, b, x * x + y * y - r0 * r0)) {
      if (a * root + b > 0 && r0 + r1 * root >= 0) {
        first = Math.min(first, Math.max(root, enter));
      }
    }
    return first;
  }

  private static double leaveFlat(WallSection wall, Beam beam, double enter) {
    double x = beam.position().xMetres();
    double y = beam.position().yMetres();
    double above = beam.heightMetres() - wall.bottomHeight();
    double rateX = (wall.top().halfX() - wall.bottom().halfX()) / wall.height();
    double rateY = (wall.top().halfY() - wall.bottom().halfY()) / wall.height();
    double gapX = wall.bottom().halfX() + rateX * above;
    double gapY = wall.bottom().halfY() + rateY * above;
    double closeX = rateX * beam.down();
    double closeY = rateY * beam.down();
    double first =
        Math.min(side(gapX - x, closeX + beam.alongX()), side(gapX + x, closeX - beam.alongX()));
    first = Math.min(first, side(gapY - y, closeY + beam.alongY()));
    return Math.max(Math.min(first, side(gapY + y, closeY - beam.alongY())), enter);
  }

  /** Returns when a gap that closes at a rate is closed. */
  private static double side(double gap, double rate) {
    return rate > 0 ? gap / rate : NONE;
  }
}
