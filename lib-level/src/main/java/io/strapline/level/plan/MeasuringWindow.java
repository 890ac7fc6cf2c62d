package io.strapline.level.plan;

import io.strapline.level.internal.Check;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.point.Mounting;
import io.strapline.level.point.PointSettings;

/**
 * The levels that a measuring point can measure. Immutable.
 *
 * @param lowestMetres above the datum, finite or negative infinite
 * @param highestMetres above the datum, finite or infinite, above {@code lowestMetres}
 */
public record MeasuringWindow(double lowestMetres, double highestMetres) {

  /** Every level. */
  public static final MeasuringWindow OPEN =
      new MeasuringWindow(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);

  /** Checks the order. */
  public MeasuringWindow {
    if (!(lowestMetres < highestMetres)) {
      throw Check.error(
          "MeasuringWindow.highest",
          highestMetres,
          "m",
          "must be above lowest (" + lowestMetres + " m)",
          "check reference height, dead zone, far limit and loop range against each other");
    }
  }

  /**
   * Returns the window of a measuring point: between dead zone and far limit, and, if it has a loop
   * range, between 4 and 20 mA. All of it must be met, and a vessel bounds it too.
   *
   * @throws IllegalArgumentException if nothing is left
   */
  public static MeasuringWindow of(PointSettings point) {
    Mounting mounting = point.mounting();
    double lowest = mounting.levelMetres(point.signal().gates().farLimitMetres());
    double highest = mounting.levelMetres(point.signal().gates().deadZoneMetres());
    if (point.range().isPresent()) {
      LoopRange range = point.range().get();
      double lower = level(range, range.lowerMetres(), mounting);
      double upper = level(range, range.upperMetres(), mounting);
      lowest = Math.max(lowest, Math.min(lower, upper));
      highest = Math.min(highest, Math.max(lower, upper));
    }
    if (point.vessel().isPresent()) {
      lowest = Math.max(lowest, 0);
      highest = Math.min(highest, point.vessel().get().maxHeightMetres());
    }
    return new MeasuringWindow(lowest, highest);
  }

  private static double level(LoopRange range, double value, Mounting mounting) {
    return range.measure() == LoopRange.Measure.LEVEL ? value : mounting.levelMetres(value);
  }

  /** Returns by how many metres a level lies outside; zero inside and at both ends. */
  double missMetres(double levelMetres) {
    return Math.max(0, Math.max(lowestMetres - levelMetres, levelMetres - highestMetres));
  }
}
