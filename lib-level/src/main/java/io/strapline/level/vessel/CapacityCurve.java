package io.strapline.level.vessel;

/**
 * The volume of a vessel against the height of a flat surface above its datum, and back. The datum
 * is the lowest inside point unless the vessel says otherwise. Implementations are immutable and
 * safe for any thread.
 *
 * <p>Both directions never fall, are exact at both ends and continuous. A height or volume outside
 * the vessel is a process condition, not an error: the end value is returned, and {@link #covers}
 * tells that this happened. NaN is refused.
 */
public interface CapacityCurve {

  /**
   * Part of the full height by which a height may lie outside [0, full height] and still count as
   * at the end.
   */
  double SNAP = 1e-9;

  /** Returns the full height above the datum, in metres, greater than zero. */
  double maxHeightMetres();

  /** Returns the volume at the full height, in cubic metres, greater than zero. */
  double capacityCubicMetres();

  /**
   * Returns the volume below a flat surface.
   *
   * @param heightMetres height of the surface above the datum; below zero counts as zero, above the
   *     full height as full
   * @return cubic metres in [0, capacity]
   * @throws IllegalArgumentException if {@code heightMetres} is NaN
   */
  double volumeCubicMetres(double heightMetres);

  /**
   * Returns the height of a flat surface above the datum that gives this volume.
   *
   * @param volumeCubicMetres below zero counts as zero, above the capacity as full
   * @return metres in [0, full height]; where several heights give the volume, the lowest of them
   * @throws IllegalArgumentException if {@code volumeCubicMetres} is NaN
   */
  double heightMetres(double volumeCubicMetres);

  /**
   * Returns whether the height lies in the vessel: in [0, full height], both ends widened by {@link
   * #SNAP} of the full height. False for NaN.
   */
  default boolean covers(double heightMetres) {
    double slack = SNAP * maxHeightMetres();
    return heightMetres >= -slack && heightMetres <= maxHeightMetres() + slack;
  }
}
