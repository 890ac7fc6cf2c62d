package io.strapline.bridge.config;

import io.strapline.level.loop.LoopRange;
import io.strapline.level.loop.LoopRange.Measure;
import io.strapline.level.point.Mounting;
import io.strapline.level.vessel.CapacityCurve;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What turns distances, percents and volumes of one point into levels above its datum. Immutable.
 *
 * @param mounting where the transmitter sits and looks
 * @param vessel the vessel, if the point has one
 * @param range what 4 and 20 mA mean, if the point has a range
 */
record Geometry(Mounting mounting, Optional<CapacityCurve> vessel, Optional<LoopRange> range) {

  private static final double LIVE_ZERO_MILLIAMPS = 4;
  private static final double FULL_SCALE_MILLIAMPS = 20;

  /**
   * Levels from the lowest to the highest.
   *
   * @param bottomMetres the lowest level
   * @param topMetres the highest level
   */
  record Band(double bottomMetres, double topMetres) {

    /** Returns whether the level lies in the band, ends included, give or take a micrometre. */
    boolean covers(double levelMetres) {
      return levelMetres >= bottomMetres - 1e-6 && levelMetres <= topMetres + 1e-6;
    }
  }

  /** Returns the levels that 4 to 20 mA stand for; empty without a range. */
  Optional<Band> rangeLevels() {
    return range.map(
        line -> {
          double first = level(line, LIVE_ZERO_MILLIAMPS);
          double second = level(line, FULL_SCALE_MILLIAMPS);
          return new Band(Math.min(first, second), Math.max(first, second));
        });
  }

  /** Returns the levels inside the vessel; empty without one. */
  Optional<Band> vesselLevels() {
    return vessel.map(shape -> new Band(bottom(shape), shape.maxHeightMetres()));
  }

  /**
   * A table may begin above the datum: what lies below its first row is not measured. The height of
   * no volume is that of the first row, and zero in a vessel.
   */
  private static double bottom(CapacityCurve shape) {
    return shape.heightMetres(0);
  }

  /**
   * Returns the level at which the point publishes this percent: of the range from 4 to 20 mA, or
   * of the vessel's height when there is no range; empty when there is neither.
   */
  OptionalDouble levelAtPercent(double percent) {
    if (range.isPresent()) {
      double span = FULL_SCALE_MILLIAMPS - LIVE_ZERO_MILLIAMPS;
      return OptionalDouble.of(level(range.get(), LIVE_ZERO_MILLIAMPS + span * percent / 100));
    }
    return vessel.isPresent()
        ? OptionalDouble.of(vessel.get().maxHeightMetres() * percent / 100)
        : OptionalDouble.empty();
  }

  private double level(LoopRange line, double currentMilliamps) {
    double value = line.valueMetres(currentMilliamps);
    return line.measure() == Measure.LEVEL ? value : mounting.levelMetres(value);
  }
}
