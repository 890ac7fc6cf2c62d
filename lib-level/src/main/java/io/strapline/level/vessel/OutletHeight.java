package io.strapline.level.vessel;

import io.strapline.level.internal.Check;

/**
 * The lowest point from which a vessel can be emptied: outlet, suction or overflow weir above the
 * lowest inside point. Below it lies the dead volume (heel). Immutable.
 *
 * <p>What is in the dead volume is in the vessel: the volume of the vessel, its mass and its alarms
 * keep counting it. Only the usable volume leaves it out. Above the outlet both differ by {@link
 * #deadCubicMetres}, below it the usable volume is zero.
 *
 * @param vessel the vessel or its capacity table
 * @param heightMetres of the outlet's lower edge above the datum, in [0, full height)
 */
public record OutletHeight(CapacityCurve vessel, double heightMetres) {

  /** Checks that the outlet lies in the vessel. */
  public OutletHeight {
    if (!(heightMetres >= 0 && heightMetres < vessel.maxHeightMetres())) {
      throw Check.error(
          "OutletHeight.height",
          heightMetres,
          "m",
          "must be zero or greater and less than the full height of "
              + Dimensions.text(vessel.maxHeightMetres()),
          "give the height of the outlet's lower edge above the lowest inside point");
    }
    heightMetres += 0.0;
  }

  /** Returns the volume that cannot be drawn off, in cubic metres. */
  public double deadCubicMetres() {
    return vessel.volumeCubicMetres(heightMetres);
  }

  /** Returns the greatest volume that can be drawn off, in cubic metres. */
  public double usableCapacityCubicMetres() {
    return vessel.capacityCubicMetres() - deadCubicMetres();
  }

  /**
   * Returns the volume that can be drawn off at a height of the surface.
   *
   * @param surfaceMetres above the datum, clamped to the vessel
   * @return cubic metres in [0, usable capacity]
   * @throws IllegalArgumentException if {@code surfaceMetres} is NaN
   */
  public double usableCubicMetres(double surfaceMetres) {
    return Math.max(vessel.volumeCubicMetres(surfaceMetres) - deadCubicMetres(), 0.0);
  }

  /**
   * Returns the height of the surface at which so much can be drawn off.
   *
   * @param usableCubicMetres clamped to [0, usable capacity]
   * @return metres above the datum, never below the outlet
   * @throws IllegalArgumentException if {@code usableCubicMetres} is NaN
   */
  public double surfaceMetres(double usableCubicMetres) {
    double usable =
        Dimensions.clamp(
            "OutletHeight.usableVolume", usableCubicMetres, "m3", usableCapacityCubicMetres());
    return Math.max(vessel.heightMetres(usable + deadCubicMetres()), heightMetres);
  }
}
