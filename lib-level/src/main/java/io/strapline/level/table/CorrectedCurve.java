package io.strapline.level.table;

import io.strapline.level.internal.Check;
import io.strapline.level.vessel.CapacityCurve;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * A curve with its deadwood counted in. Immutable.
 *
 * <p>The volume is exact (to rounding) at 4,097 heights evenly apart, at the rows of a table, and
 * at the bottom and top of every piece of deadwood. Between two of them the small rise that is left
 * follows the vessel's own curve; where that curve is flat it follows the height. So the corrected
 * curve never falls, to the last bit, which the plain sum of two rounded numbers cannot promise.
 * {@link #spreadErrorCubicMetres} says how much that may matter at most: nothing where vessel and
 * deadwood are both straight.
 *
 * <p>The full height is that of the vessel. Deadwood above it, or in the heel below a table's first
 * row, is refused, as is any that would make the volume fall with rising height or go below zero.
 */
public final class CorrectedCurve implements CapacityCurve {

  private static final int MOST_PIECES = 10_000;

  private final CapacityCurve vessel;
  private final List<Deadwood> deadwood;
  private final double[] heights;
  private final double[] vesselVolumes;
  private final double[] volumes;

  private CorrectedCurve(CapacityCurve vessel, List<Deadwood> deadwood) {
    this.vessel = vessel;
    this.deadwood = deadwood;
    CorrectionSteps steps = new CorrectionSteps(vessel, deadwood);
    heights = steps.heights();
    vesselVolumes = Arrays.stream(heights).map(vessel::volumeCubicMetres).toArray();
    volumes = steps.risingVolumes();
  }

  /**
   * Returns the curve with its deadwood counted in.
   *
   * @param vessel the vessel or its table without deadwood
   * @param deadwood each piece within the heights of the vessel, at most 10,000 pieces
   * @throws IllegalArgumentException if a piece lies outside, or if the volume would fall or go
   *     below zero, naming where
   */
  public static CorrectedCurve of(CapacityCurve vessel, List<Deadwood> deadwood) {
    Check.present("CorrectedCurve.vessel", vessel, "pass the vessel or its capacity table");
    Check.present("CorrectedCurve.deadwood", deadwood, "pass a list, empty if there is none");
    Check.between(
        "CorrectedCurve.deadwood", deadwood.size(), "pieces", 0, MOST_PIECES, "join some of them");
    List<Deadwood> pieces = List.copyOf(deadwood);
    pieces.forEach(piece -> requireInside(piece, vessel));
    return new CorrectedCurve(vessel, pieces);
  }

  private static void requireInside(Deadwood piece, CapacityCurve vessel) {
    double slack = SNAP * vessel.maxHeightMetres();
    // An empty volume gives the height of a table's first row, and zero in a vessel.
    double bottom = vessel.heightMetres(0);
    if (piece.bottomMetres() < bottom - slack
        || piece.topMetres() > vessel.maxHeightMetres() + slack) {
      throw Check.error(
          "CorrectedCurve.deadwood",
          text("%s from %s to %s", piece.name(), piece.bottomMetres(), piece.topMetres()),
          "m",
          text("must lie between %s and %s m", bottom, vessel.maxHeightMetres()),
          "count only the part inside; what lies in a table's heel belongs to its first volume");
    }
  }

  /** Returns the curve without deadwood. */
  public CapacityCurve vessel() {
    return vessel;
  }

  /** Returns the pieces. */
  public List<Deadwood> deadwood() {
    return deadwood;
  }

  /**
   * Returns how far the volume may lie from the plain sum between two exact heights, at most, in
   * cubic metres: the greatest deadwood in any one step.
   */
  public double spreadErrorCubicMetres() {
    double greatest = 0;
    for (int i = 1; i < heights.length; i++) {
      double rise = volumes[i] - volumes[i - 1];
      greatest = Math.max(greatest, Math.abs(rise - (vesselVolumes[i] - vesselVolumes[i - 1])));
    }
    return greatest;
  }

  @Override
  public double maxHeightMetres() {
    return vessel.maxHeightMetres();
  }

  @Override
  public double capacityCubicMetres() {
    return volumes[volumes.length - 1];
  }

  @Override
  public double volumeCubicMetres(double heightMetres) {
    refuseNaN("CorrectedCurve.height", heightMetres, "m");
    if (heightMetres <= heights[0]) {
      return volumes[0];
    }
    if (heightMetres >= maxHeightMetres()) {
      return capacityCubicMetres();
    }
    int at = Arrays.binarySearch(heights, heightMetres);
    return at >= 0 ? volumes[at] : between(-at - 2, heightMetres);
  }

  /** Every step below never falls with the height, rounding included. */
  private double between(int lower, double height) {
    double rise = volumes[lower + 1] - volumes[lower];
    double vesselRise = vesselVolumes[lower + 1] - vesselVolumes[lower];
    double part =
        vesselRise > 0
            ? (vessel.volumeCubicMetres(height) - vesselVolumes[lower]) / vesselRise
            : (height - heights[lower]) / (heights[lower + 1] - heights[lower]);
    return Math.min(volumes[lower] + part * rise, volumes[lower + 1]);
  }

  /** {@inheritDoc} In a table with a heel, its volume or less gives the height of the first row. */
  @Override
  public double heightMetres(double volumeCubicMetres) {
    refuseNaN("CorrectedCurve.volume", volumeCubicMetres, "m3");
    double wanted = Math.min(volumeCubicMetres, capacityCubicMetres());
    int upper = firstHolding(wanted);
    return upper == 0 ? heights[0] : lowest(heights[upper - 1], heights[upper], wanted);
  }

  private int firstHolding(double wanted) {
    int low = 0;
    int high = volumes.length - 1;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (volumes[middle] >= wanted) {
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    return low;
  }

  /** Bisection down to neighbouring doubles; the volume holds at {@code above}, not at below. */
  private double lowest(double below, double above, double wanted) {
    double low = below;
    double high = above;
    double middle = low + (high - low) / 2;
    while (middle > low && middle < high) {
      if (volumeCubicMetres(middle) >= wanted) {
        high = middle;
      } else {
        low = middle;
      }
      middle = low + (high - low) / 2;
    }
    return high;
  }

  @Override
  public boolean covers(double heightMetres) {
    return vessel.covers(heightMetres);
  }

  @Override
  public String toString() {
    return "CorrectedCurve[" + vessel + ", " + deadwood.size() + " pieces of deadwood]";
  }

  private static void refuseNaN(String field, double value, String unit) {
    if (Double.isNaN(value)) {
      throw Check.error(
          field, value, unit, "must be a number", "judge the reading's quality first");
    }
  }

  private static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
