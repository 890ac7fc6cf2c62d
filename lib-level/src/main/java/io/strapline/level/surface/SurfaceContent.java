package io.strapline.level.surface;

import java.util.OptionalDouble;

/**
 * What lies under a surface in a vessel. Immutable.
 *
 * @param surface the surface
 * @param equivalentLevelMetres level above the datum of a flat surface with the same volume, in [0,
 *     full height]
 * @param volumeCubicMetres in [0, capacity]
 * @param errorCubicMetres numerical error of the volume as far as can be told, zero or greater;
 *     says nothing about how well the surface fits the solids
 * @param lowestMetres lowest level of the surface in the vessel, never below the datum
 * @param highestMetres highest level of the surface in the vessel, never above the full height; for
 *     a crater a bound that is not exceeded
 * @param cutByRoof whether the surface reaches the roof, so that the volume was cut there
 * @param baresFloor whether a part of the floor or hopper wall lies bare
 */
public record SurfaceContent(
    Surface surface,
    double equivalentLevelMetres,
    double volumeCubicMetres,
    double errorCubicMetres,
    double lowestMetres,
    double highestMetres,
    boolean cutByRoof,
    boolean baresFloor) {

  /** Part of the capacity that the closed form may err by, from rounding. */
  private static final double ROUNDING = 1e-13;

  /**
   * Returns what lies under a surface.
   *
   * <p>Where the whole surface lies between straight walls, the equivalent level is the mean height
   * of the surface over the plan, in closed form but for a crater. Otherwise the depth is
   * integrated over the plan; how far that may be off is stated.
   */
  public static SurfaceContent of(SolidsVessel vessel, Surface surface) {
    OptionalDouble mean = surface.meanMetres(vessel.plan());
    if (mean.isPresent() && (liesBetweenStraightWalls(vessel, surface) || isFlat(surface))) {
      return closed(vessel, surface, mean.getAsDouble());
    }
    return integrated(vessel, surface);
  }

  private static boolean liesBetweenStraightWalls(SolidsVessel vessel, Surface surface) {
    return surface.lowestMetres(vessel.plan()) >= vessel.straightFromMetres()
        && surface.highestMetres(vessel.plan()) <= vessel.straightToMetres();
  }

  private static boolean isFlat(Surface surface) {
    return surface.steepestRadians() == 0;
  }

  private static SurfaceContent closed(SolidsVessel vessel, Surface surface, double mean) {
    double full = vessel.curve().maxHeightMetres();
    double level = Math.min(Math.max(mean, 0.0), full);
    return content(
        vessel,
        surface,
        level,
        new VolumeIntegral.Result(
            vessel.curve().volumeCubicMetres(level),
            ROUNDING * vessel.curve().capacityCubicMetres(),
            mean > full * (1 + Plan.SNAP),
            surface.lowestMetres(vessel.plan()) < vessel.straightFromMetres()));
  }

  private static SurfaceContent integrated(SolidsVessel vessel, Surface surface) {
    Cell whole = Cell.whole(vessel.plan(), pivot(surface));
    VolumeIntegral.Result result = VolumeIntegral.of(vessel, surface, whole);
    double level = vessel.curve().heightMetres(result.cubicMetres());
    return content(vessel, surface, level, result);
  }

  /** Returns the place where the surface has its sharpest point. */
  private static PlanPoint pivot(Surface surface) {
    if (surface instanceof ConeSurface cone) {
      return cone.axis();
    }
    return surface instanceof CraterSurface crater ? crater.funnel().axis() : PlanPoint.CENTRE;
  }

  private static SurfaceContent content(
      SolidsVessel vessel, Surface surface, double level, VolumeIntegral.Result result) {
    double full = vessel.curve().maxHeightMetres();
    return new SurfaceContent(
        surface,
        level,
        Math.min(result.cubicMetres(), vessel.curve().capacityCubicMetres()),
        result.error(),
        Math.min(Math.max(surface.lowestMetres(vessel.plan()), 0.0), full),
        Math.min(Math.max(surface.highestMetres(vessel.plan()), 0.0), full),
        result.cutByRoof(),
        result.baresFloor());
  }
}
