package io.strapline.level.vessel;

/**
 * A vessel known by its shape and inside dimensions: its volume against height follows from
 * geometry, without a capacity table. All dimensions are inside dimensions in metres; the vessel
 * stands or lies level. Immutable and safe for any thread.
 */
public sealed interface Vessel extends CapacityCurve
    permits StackedVessel, LyingCylinder, LyingTank, TiltedTank, Sphere {

  /**
   * Returns the free surface of a level filling, the slope of volume against height.
   *
   * @param heightMetres height of the surface above the datum; clamped like a volume's height
   * @return square metres, zero or greater; at a step between sections the lower section's
   * @throws IllegalArgumentException if {@code heightMetres} is NaN
   */
  double surfaceSquareMetres(double heightMetres);

  /** Returns the vessel in a short English phrase, dimensions to the millimetre. */
  String describe();
}
