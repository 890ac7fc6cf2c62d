package io.strapline.level.surface;

import io.strapline.level.internal.Check;
import java.util.OptionalDouble;

/**
 * A heap (cone up under the fill point) or a draw-down funnel (cone down over the draw point): the
 * height is {@code apex - tan(a) rho} for a heap and {@code apex + tan(a) rho} for a funnel, with
 * rho the distance in plan from the cone's axis and a the angle of repose. Immutable.
 *
 * @param axis place of the cone's upright axis in plan
 * @param apexLevelMetres height of the point of the cone above the datum; finite
 * @param slope rise per metre away from the axis: negative for a heap, positive for a funnel, zero
 *     for a flat surface
 */
public record ConeSurface(PlanPoint axis, double apexLevelMetres, double slope) implements Surface {

  /** Steepest angle of repose that is taken: no bulk solid stands steeper by itself. */
  public static final double STEEPEST_REPOSE_DEGREES = 80;

  /** Checks the numbers. */
  public ConeSurface {
    Check.present("ConeSurface.axis", axis, "give the fill or the draw point");
    apexLevelMetres =
        Check.finite("ConeSurface.apexLevel", apexLevelMetres, "m", "give the cone's point");
    double steepest = Math.tan(Math.toRadians(STEEPEST_REPOSE_DEGREES));
    slope =
        Check.between(
            "ConeSurface.slope",
            slope,
            "m/m",
            -steepest,
            steepest,
            "give the tangent of the angle of repose, negative for a heap");
  }

  /**
   * Returns a heap.
   *
   * @param axis fill point
   * @param apexLevelMetres height of the peak above the datum
   * @param reposeDegrees angle of repose to the horizontal, in [0, 80]
   */
  public static ConeSurface heap(PlanPoint axis, double apexLevelMetres, double reposeDegrees) {
    return new ConeSurface(axis, apexLevelMetres, -tangent(reposeDegrees));
  }

  /**
   * Returns a draw-down funnel.
   *
   * @param axis draw point
   * @param apexLevelMetres height of the bottom of the funnel above the datum
   * @param reposeDegrees angle of the funnel to the horizontal, in [0, 80]
   */
  public static ConeSurface funnel(PlanPoint axis, double apexLevelMetres, double reposeDegrees) {
    return new ConeSurface(axis, apexLevelMetres, tangent(reposeDegrees));
  }

  private static double tangent(double reposeDegrees) {
    Check.between(
        "ConeSurface.repose",
        reposeDegrees,
        "deg",
        0,
        STEEPEST_REPOSE_DEGREES,
        "give the angle of repose to the horizontal");
    return Math.tan(Math.toRadians(reposeDegrees));
  }

  /** Returns the cone moved up or down so that it goes through a level at a place. */
  public ConeSurface through(PlanPoint place, double levelMetres) {
    return new ConeSurface(axis, levelMetres - slope * axis.distanceMetres(place), slope);
  }

  /** Returns whether it is a heap. */
  public boolean isHeap() {
    return slope < 0;
  }

  @Override
  public double height(double x, double y) {
    return apexLevelMetres + slope * Math.hypot(x - axis.xMetres(), y - axis.yMetres());
  }

  @Override
  public double steepestRadians() {
    return Math.atan(Math.abs(slope));
  }

  @Override
  public double highestMetres(Plan plan) {
    return apexLevelMetres + Math.max(slope, 0.0) * plan.greatestDistanceMetres(axis);
  }

  @Override
  public double lowestMetres(Plan plan) {
    return apexLevelMetres + Math.min(slope, 0.0) * plan.greatestDistanceMetres(axis);
  }

  /**
   * {@inheritDoc}
   *
   * <p>Along the beam the height above the apex is h - c s and the distance from the axis squared
   * is r2 + 2 q s + u2 s^2; on the double cone the first squared is slope squared times the second,
   * a quadratic in s. The mirror half of the double cone gives false ones, which the caller sorts
   * out. Derived here.
   */
  @Override
  public double[] crossings(Beam beam) {
    double x = beam.position().xMetres() - axis.xMetres();
    double y = beam.position().yMetres() - axis.yMetres();
    double h = beam.heightMetres() - apexLevelMetres;
    double k = slope * slope;
    double a =
        beam.down() * beam.down()
            - k * (beam.alongX() * beam.alongX() + beam.alongY() * beam.alongY());
    double b = -h * beam.down() - k * (x * beam.alongX() + y * beam.alongY());
    return Quadratic.roots(a, b, h * h - k * (x * x + y * y));
  }

  @Override
  public OptionalDouble meanMetres(Plan plan) {
    return OptionalDouble.of(apexLevelMetres + slope * plan.meanDistanceMetres(axis));
  }

  @Override
  public String describe() {
    String kind = isHeap() ? "heap" : "funnel";
    return kind + " about " + axis.describe() + " m, point at " + apexLevelMetres + " m";
  }
}
