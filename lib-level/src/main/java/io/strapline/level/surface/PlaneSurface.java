package io.strapline.level.surface;

import io.strapline.level.internal.Check;
import java.util.OptionalDouble;

/**
 * A tilted plane. Immutable.
 *
 * @param axisLevelMetres height over the vessel's axis above the datum; finite
 * @param slopeX rise per metre along x; finite
 * @param slopeY rise per metre along y; finite
 */
public record PlaneSurface(double axisLevelMetres, double slopeX, double slopeY)
    implements Surface {

  /** Checks the numbers. */
  public PlaneSurface {
    axisLevelMetres =
        Check.finite("PlaneSurface.axisLevel", axisLevelMetres, "m", "give the height on the axis");
    slopeX = Check.finite("PlaneSurface.slopeX", slopeX, "m/m", "give the rise per metre");
    slopeY = Check.finite("PlaneSurface.slopeY", slopeY, "m/m", "give the rise per metre");
  }

  @Override
  public double height(double x, double y) {
    return axisLevelMetres + slopeX * x + slopeY * y;
  }

  @Override
  public double steepestRadians() {
    return Math.atan(Math.hypot(slopeX, slopeY));
  }

  @Override
  public double highestMetres(Plan plan) {
    return axisLevelMetres + reach(plan);
  }

  @Override
  public double lowestMetres(Plan plan) {
    return axisLevelMetres - reach(plan);
  }

  /** Returns the rise from the axis to the plan's highest place; the plan is symmetric about it. */
  private double reach(Plan plan) {
    if (plan instanceof RectangularPlan rectangle) {
      return (Math.abs(slopeX) * rectangle.lengthMetres()
              + Math.abs(slopeY) * rectangle.widthMetres())
          / 2;
    }
    return Math.hypot(slopeX, slopeY) * plan.greatestDistanceMetres(PlanPoint.CENTRE);
  }

  @Override
  public double[] crossings(Beam beam) {
    double above =
        beam.heightMetres() - height(beam.position().xMetres(), beam.position().yMetres());
    double approach = beam.down() + slopeX * beam.alongX() + slopeY * beam.alongY();
    return new double[] {above / approach};
  }

  @Override
  public OptionalDouble meanMetres(Plan plan) {
    return OptionalDouble.of(axisLevelMetres);
  }

  @Override
  public String describe() {
    return "plane, " + axisLevelMetres + " m on the axis, slopes " + slopeX + " and " + slopeY;
  }
}
