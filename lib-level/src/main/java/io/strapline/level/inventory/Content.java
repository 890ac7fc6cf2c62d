package io.strapline.level.inventory;

import io.strapline.level.internal.Check;
import io.strapline.level.vessel.CapacityCurve;

/**
 * How much a vessel holds below a flat surface: volume in cubic metres or mass in kilograms,
 * whichever the maker of the value says. Flow, totals and batches come out in the same unit.
 * Implementations are immutable, never fall with the height, and hold the end value outside the
 * vessel.
 */
@FunctionalInterface
public interface Content {

  /**
   * Returns the amount below a flat surface.
   *
   * @param heightMetres height of the surface above the datum; outside the vessel the end counts
   * @return cubic metres or kilograms, zero or more
   * @throws IllegalArgumentException if {@code heightMetres} is NaN
   */
  double at(double heightMetres);

  /** Returns the volume of this vessel as a content, in cubic metres. */
  static Content volume(CapacityCurve vessel) {
    Check.present("Content.vessel", vessel, "give the vessel");
    return vessel::volumeCubicMetres;
  }

  /** Returns the mass by this curve as a content, in kilograms. */
  static Content mass(MassCurve mass) {
    Check.present("Content.mass", mass, "give the mass curve");
    return heightMetres -> mass.atHeight(heightMetres).kilograms();
  }
}
