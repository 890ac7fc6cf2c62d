package io.strapline.level.vessel;

/**
 * Rounds a height to fewer digits before a formula is worked out. Stateless.
 *
 * <p>A volume must never fall when the height rises, not even in its last bit, though each formula
 * has rounding errors of some 1e-16 of its value. On the coarse grid two different heights lie
 * 6e-14 to 1.1e-13 of themselves apart, so that the volumes of two neighbours on the grid differ by
 * more than the rounding errors wherever the volume grows at least with a small power of the
 * height. What rounding the height changes in the volume is that power times 6e-14 at most.
 */
final class Grid {

  /** Bits dropped from a height: neighbours on the grid are this power of two doubles apart. */
  static final int DROPPED_BITS = 9;

  /** Doubles between neighbours on the grid, for searches. */
  static final long STEP = 1L << DROPPED_BITS;

  private Grid() {}

  /**
   * Returns the nearest height on the grid.
   *
   * @param height zero or greater, finite
   */
  static double coarse(double height) {
    long bits = Double.doubleToRawLongBits(height) + STEP / 2;
    return Double.longBitsToDouble(bits >> DROPPED_BITS << DROPPED_BITS);
  }
}
