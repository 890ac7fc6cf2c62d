package io.strapline.level.uncertainty;

import io.strapline.level.vessel.CapacityCurve;
import io.strapline.level.vessel.Vessel;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** How the volume changes with the level, and where that is not straight. Immutable. */
final class LevelSlope {

  /** A central difference is never taken over less than this part of the height. */
  private static final double LEAST_STEP = 1e-6;

  /** The curve may bend away by this part of the expanded uncertainty before it is doubtful. */
  private static final double MOST_BEND = 0.1;

  private final CapacityCurve curve;
  private final double level;
  private final double bottom;
  private final double step;

  /**
   * Prepares the slope at a level.
   *
   * @param standardLevelMetres standard uncertainty of the level: the step of the central
   *     difference, as GUM 5.1.3 note 2 has it
   */
  LevelSlope(CapacityCurve curve, double level, double standardLevelMetres) {
    this.curve = curve;
    this.level = level;
    // An empty volume gives the height of a table's first row, and zero in a vessel.
    bottom = curve.heightMetres(0);
    step = Math.max(standardLevelMetres, LEAST_STEP * curve.maxHeightMetres());
  }

  /** Square metres: the vessel's free surface, or a central difference kept inside the curve. */
  double squareMetres() {
    double inside = Math.min(Math.max(level, bottom), curve.maxHeightMetres());
    if (curve instanceof Vessel vessel) {
      return vessel.surfaceSquareMetres(inside);
    }
    double high = Math.min(inside + step, curve.maxHeightMetres());
    double low = Math.max(inside - step, bottom);
    return (curve.volumeCubicMetres(high) - curve.volumeCubicMetres(low)) / (high - low);
  }

  /**
   * Returns why the slope may not stand for the curve.
   *
   * @param expandedLevelMetres how far the level may be off
   * @param expandedCubicMetres the expanded uncertainty of the volume that it is judged by
   */
  List<String> doubts(double expandedLevelMetres, double expandedCubicMetres) {
    List<String> doubts = new ArrayList<>();
    double low = level - expandedLevelMetres;
    double high = level + expandedLevelMetres;
    if (low < bottom || high > curve.maxHeightMetres()) {
      doubts.add(
          text(
              "the level may lie anywhere from %.4f to %.4f m, the curve ends at %.4f and %.4f m",
              low, high, bottom, curve.maxHeightMetres()));
    }
    double here = curve.volumeCubicMetres(level);
    double down = here - curve.volumeCubicMetres(low);
    double up = curve.volumeCubicMetres(high) - here;
    double straight = squareMetres() * expandedLevelMetres;
    double bend = Math.max(Math.abs(up - straight), Math.abs(down - straight));
    if (bend > MOST_BEND * expandedCubicMetres) {
      doubts.add(
          text(
              "the curve bends: by the level alone the volume may lie %.4g m3 lower or %.4g m3"
                  + " higher, where a straight line gives %.4g m3 both ways",
              down, up, straight));
    }
    return doubts;
  }

  private static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
