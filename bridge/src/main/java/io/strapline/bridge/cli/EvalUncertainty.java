package io.strapline.bridge.cli;

import io.strapline.bridge.config.Accuracy;
import io.strapline.bridge.config.PointConfig;
import io.strapline.level.point.Mounting;
import io.strapline.level.point.PointSettings;
import io.strapline.level.point.PointSnapshot;
import io.strapline.level.point.Quantity;
import io.strapline.level.reading.Reading;
import io.strapline.level.uncertainty.ContentUncertainty;
import io.strapline.level.uncertainty.MeasuredContent;
import io.strapline.level.uncertainty.UncertaintyBudget;
import io.strapline.level.vessel.CapacityCurve;
import io.strapline.level.vessel.StackedVessel;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The uncertainty budgets of one snapshot. Immutable.
 *
 * @param level of the level
 * @param volume of the volume, if the point has a vessel
 * @param mass of the mass, if the point has a density, too
 */
record EvalUncertainty(
    UncertaintyBudget level, Optional<UncertaintyBudget> volume, Optional<UncertaintyBudget> mass) {

  /**
   * The budget of a level does not look at the vessel, nor those of level and volume at density.
   */
  private static final CapacityCurve ANY_VESSEL = StackedVessel.uprightCylinder(1, 1);

  private static final double ANY_DENSITY = 1;

  /** Returns the budgets; empty when the point tells no errors, or its level is BAD. */
  static Optional<EvalUncertainty> of(PointConfig config, PointSnapshot snapshot) {
    OptionalDouble distance =
        snapshot.reading(Quantity.DISTANCE).map(Reading::usable).orElse(OptionalDouble.empty());
    // Above its own reference point a transmitter measures nothing.
    if (config.accuracy().isEmpty() || distance.isEmpty() || distance.getAsDouble() < 0) {
      return Optional.empty();
    }
    return Optional.of(of(config.point(), config.accuracy().get(), distance.getAsDouble()));
  }

  private static EvalUncertainty of(PointSettings point, Accuracy accuracy, double distance) {
    Mounting mounting = point.mounting();
    MeasuredContent.Beam beam =
        new MeasuredContent.Beam(
            distance, mounting.beamAngleDegrees(), mounting.referenceHeightMetres());
    OptionalDouble density = point.densityKilogramsPerCubicMetre();
    MeasuredContent content =
        new MeasuredContent(
            beam, point.vessel().orElse(ANY_VESSEL), density.orElse(ANY_DENSITY), 0);
    ContentUncertainty all =
        ContentUncertainty.of(content, accuracy.sources(), accuracy.coverageFactor());
    boolean weighed = point.vessel().isPresent() && density.isPresent();
    return new EvalUncertainty(
        all.level(),
        point.vessel().map(vessel -> all.volume()),
        weighed ? Optional.of(all.mass()) : Optional.empty());
  }

  /** Returns k, by which all three are expanded. */
  double coverageFactor() {
    return level.coverageFactor();
  }
}
