package io.strapline.level.surface;

import java.util.function.DoubleBinaryOperator;
import java.util.function.DoubleUnaryOperator;

/**
 * Volume between the inside of a vessel and a surface over a cell of the plan, in polar coordinates
 * about the cell's pivot: the integral over all bearings of the integral along the ray of depth
 * times distance. The depth is the lower of surface and roof less the floor, never below zero. Rays
 * are broken where they cross an edge between sections and where the surface meets floor, roof or
 * another part of itself.
 *
 * <p>Both integrals halve their intervals; the error allowed in each interval is 1e-10 of plan area
 * times height outside and a tenth of it inside, with a cap on rays and on places per ray. What is
 * left is stated in the result.
 */
final class VolumeIntegral {

  private static final double ALLOWED_SHARE = 1e-10;
  private static final int MOST_RAYS = 6000;
  private static final int MOST_PLACES = 20_000;

  private final SolidsVessel vessel;
  private final Surface surface;
  private final Cell cell;
  private final double allowed;
  private final double slack;
  private double worstRayError;
  private boolean cutByRoof;
  private boolean baresFloor;

  private VolumeIntegral(SolidsVessel vessel, Surface surface, Cell cell) {
    this.vessel = vessel;
    this.surface = surface;
    this.cell = cell;
    slack = Plan.SNAP * vessel.curve().maxHeightMetres();
    double height = Math.min(surface.highestMetres(cell.plan()), vessel.curve().maxHeightMetres());
    allowed = ALLOWED_SHARE * cell.plan().areaSquareMetres() * Math.max(height, slack);
  }

  /**
   * A volume and what was met on the way.
   *
   * @param cubicMetres the volume
   * @param error its greatest error as far as can be told
   * @param cutByRoof whether the surface reaches the roof
   * @param baresFloor whether the surface lies below the floor somewhere
   */
  record Result(double cubicMetres, double error, boolean cutByRoof, boolean baresFloor) {}

  static Result of(SolidsVessel vessel, Surface surface, Cell cell) {
    return new VolumeIntegral(vessel, surface, cell).integrate();
  }

  private Result integrate() {
    Quadrature turn = new Quadrature(this::ray, allowed, MOST_RAYS);
    double volume = turn.over(bearings());
    double error = turn.error() + 2 * Math.PI * worstRayError;
    return new Result(volume, error, cutByRoof, baresFloor);
  }

  /** Returns a full turn, broken also where a ray grazes an edge between sections. */
  private double[] bearings() {
    Breaks turn = cell.turn();
    for (WallSection wall : vessel.walls()) {
      addGrazing(turn, wall.bottom());
      addGrazing(turn, wall.top());
    }
    return turn.rising();
  }

  private void addGrazing(Breaks turn, Outline outline) {
    if (!outline.round()) {
      cell.addCorners(turn, outline.halfX(), outline.halfY());
    } else if (cell.pivot().radiusMetres() > outline.halfX()) {
      double towards = Math.atan2(-cell.pivot().yMetres(), -cell.pivot().xMetres());
      double aside = Math.asin(outline.halfX() / cell.pivot().radiusMetres());
      turn.add(Math.IEEEremainder(towards + aside, 2 * Math.PI));
      turn.add(Math.IEEEremainder(towards - aside, 2 * Math.PI));
    }
  }

  private double ray(double bearing) {
    double edge = cell.toEdge(bearing);
    if (!(edge > 0)) {
      return 0;
    }
    double ux = Math.cos(bearing);
    double uy = Math.sin(bearing);
    Quadrature along =
        new Quadrature(
            s -> s * depth(cell.pivot().xMetres() + s * ux, cell.pivot().yMetres() + s * uy),
            allowed / 10,
            MOST_PLACES);
    double sum = along.over(breaks(ux, uy, edge));
    worstRayError = Math.max(worstRayError, along.error());
    return sum;
  }

  private double depth(double x, double y) {
    double height = surface.height(x, y);
    double roof = vessel.roof(x, y);
    double floor = vessel.floor(x, y);
    cutByRoof |= height > roof + slack;
    baresFloor |= height < floor - slack;
    return Math.max(Math.min(height, roof) - floor, 0.0);
  }

  /** Returns the rising distances at which the depth along a ray has a kink or a jump. */
  private double[] breaks(double ux, double uy, double edge) {
    Breaks breaks = new Breaks(0, edge);
    for (WallSection wall : vessel.walls()) {
      addCrossings(breaks, wall.bottom(), ux, uy);
      addCrossings(breaks, wall.top(), ux, uy);
    }
    for (WallSection wall : vessel.walls()) {
      if (!wall.bottom().round() && !wall.straight()) {
        breaks.addSignChanges(along(wall::besideRidge, ux, uy));
      }
    }
    if (surface instanceof CraterSurface crater) {
      breaks.addSignChanges(
          along((x, y) -> crater.heap().height(x, y) - crater.funnel().height(x, y), ux, uy));
    }
    breaks.addSignChanges(along((x, y) -> surface.height(x, y) - vessel.floor(x, y), ux, uy));
    breaks.addSignChanges(along((x, y) -> surface.height(x, y) - vessel.roof(x, y), ux, uy));
    return breaks.rising();
  }

  private DoubleUnaryOperator along(DoubleBinaryOperator overPlan, double ux, double uy) {
    double x = cell.pivot().xMetres();
    double y = cell.pivot().yMetres();
    return s -> overPlan.applyAsDouble(x + s * ux, y + s * uy);
  }

  private void addCrossings(Breaks breaks, Outline outline, double ux, double uy) {
    double x = cell.pivot().xMetres();
    double y = cell.pivot().yMetres();
    if (outline.round()) {
      double across = x * uy - y * ux;
      double half = Math.sqrt(outline.halfX() * outline.halfX() - across * across);
      breaks.add(-(x * ux + y * uy) - half);
      breaks.add(-(x * ux + y * uy) + half);
      return;
    }
    breaks.add((outline.halfX() - x) / ux);
    breaks.add((-outline.halfX() - x) / ux);
    breaks.add((outline.halfY() - y) / uy);
    breaks.add((-outline.halfY() - y) / uy);
  }
}
