package io.strapline.level.table;

import io.strapline.level.internal.Check;
import io.strapline.level.units.Dimension;
import io.strapline.level.units.Quantities;
import io.strapline.level.vessel.CapacityCurve;

/**
 * The volume that belongs to a dip. Immutable.
 *
 * @param heightMetres the dip as read
 * @param volumeCubicMetres the volume below it; beyond the curve its end value
 * @param covered whether the dip lies in the curve; if not, the volume is no measurement
 */
public record DipVolume(double heightMetres, double volumeCubicMetres, boolean covered) {

  /**
   * Looks a dip up between the rows, however fine its fraction.
   *
   * @param dip with unit, such as {@code 7 ft 4 1/2 in}, {@code 3 5/8 in} or {@code 1.234 m}
   * @throws IllegalArgumentException telling what is not understood
   */
  public static DipVolume of(CapacityCurve curve, String dip) {
    Check.present("DipVolume.curve", curve, "pass the vessel or its capacity table");
    double height = Quantities.parse(dip, Dimension.LENGTH);
    return new DipVolume(height, curve.volumeCubicMetres(height), curve.covers(height));
  }
}
