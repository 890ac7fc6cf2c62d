package io.strapline.level.vessel;

/**
 * One part of an upright vessel between two levels, such as the cone under a silo. Heights are
 * measured from the section's own lower edge. Immutable and safe for any thread.
 */
public sealed interface Section
    permits CylinderSection,
        ConeSection,
        PrismSection,
        PyramidSection,
        HeadSection,
        TransitionSection,
        SlopedFloorSection,
        AreaSection {

  /** Returns the height of the section in metres, greater than zero. */
  double heightMetres();

  /** Returns the volume of the whole section in cubic metres, greater than zero. */
  double volumeCubicMetres();

  /**
   * Returns the volume below a level surface; it never falls with height, to the last bit.
   *
   * @param aboveBottomMetres height above the section's lower edge; clamped to the section, not NaN
   * @return cubic metres in [0, whole section], exact at both ends
   */
  double volumeBelow(double aboveBottomMetres);

  /**
   * Returns the area of a level surface.
   *
   * @param aboveBottomMetres height above the section's lower edge; clamped to the section, not NaN
   * @return square metres, zero or greater
   */
  double areaAt(double aboveBottomMetres);

  /**
   * Returns about the height that gives this volume, where the search for the exact height starts.
   *
   * @param cubicMetres in [0, whole section]
   */
  double aboutHeightOf(double cubicMetres);

  /** Returns the section in a short English phrase, dimensions to the millimetre. */
  String describe();
}
