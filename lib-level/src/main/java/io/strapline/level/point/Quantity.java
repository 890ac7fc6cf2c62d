package io.strapline.level.point;

/** What a measuring point computes, with the unit of its readings. */
public enum Quantity {
  /** Distance along the beam from the reference point to the surface, in metres. */
  DISTANCE("m"),
  /** Plumb distance from the reference point down to the surface, in metres. */
  ULLAGE("m"),
  /** Height of the surface above the datum, in metres. */
  LEVEL("m"),
  /** Percent of the measuring range, 0 at the lower and 100 at the upper range value. */
  PERCENT("%"),
  /** Volume below the surface, in cubic metres. */
  VOLUME("m3"),
  /** Capacity less volume, in cubic metres. */
  FREE_VOLUME("m3"),
  /** Mass, in kilograms; only with a density. */
  MASS("kg"),
  /** Loop current, measured or computed from the range, in milliamps; only with a range. */
  LOOP_CURRENT("mA"),
  /** Strength of the return in the device's own unit; only where the device tells it. */
  STRENGTH("");

  private final String unit;

  Quantity(String unit) {
    this.unit = unit;
  }

  /** Returns the unit's symbol; empty for {@link #STRENGTH}. */
  public String unit() {
    return unit;
  }
}
