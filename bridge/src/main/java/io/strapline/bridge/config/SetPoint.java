package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import io.strapline.bridge.config.Geometry.Band;
import io.strapline.level.units.Dimension;
import io.strapline.level.units.Quantities;
import io.strapline.level.vessel.CapacityCurve;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A set point as written: a level, a percent of the range or a volume. Not thread-safe.
 *
 * @param keys section of the alarm, with the key {@code at}
 * @param geometry of the point, unless it has problems of its own
 */
record SetPoint(Section keys, Optional<Geometry> geometry) {

  /** Returns the level above the datum, in metres; NaN after a problem. */
  double levelMetres() {
    if (!keys.has("at")) {
      return keys.quantity("at", Dimension.LENGTH);
    }
    double level = keys.scalar("at").map(this::convert).orElse(Double.NaN);
    if (Double.isFinite(level)) {
      geometry.ifPresent(known -> refuseOutside(level, known));
    }
    return level;
  }

  private double convert(Scalar at) {
    OptionalDouble percent = as(Dimension.RATIO, at);
    if (percent.isPresent()) {
      return fromPercent(percent.getAsDouble());
    }
    OptionalDouble volume = as(Dimension.VOLUME, at);
    return volume.isPresent() ? fromVolume(volume.getAsDouble()) : at.quantity(Dimension.LENGTH);
  }

  private static OptionalDouble as(Dimension dimension, Scalar at) {
    try {
      return OptionalDouble.of(Quantities.parse(at.text(), dimension));
    } catch (IllegalArgumentException otherUnit) {
      return OptionalDouble.empty();
    }
  }

  private double fromPercent(double percent) {
    OptionalDouble level =
        geometry.map(known -> known.levelAtPercent(percent)).orElse(OptionalDouble.empty());
    if (level.isEmpty() && geometry.isPresent()) {
      keys.error(
          "at",
          Reason.CONFLICT,
          "is a percent, and the point has neither a range nor a vessel",
          "give the range, or write a level such as 6 m");
    }
    return level.orElse(Double.NaN);
  }

  private double fromVolume(double volume) {
    if (geometry.isEmpty()) {
      return Double.NaN;
    }
    Optional<CapacityCurve> vessel = geometry.get().vessel();
    if (vessel.isEmpty()) {
      keys.error(
          "at",
          Reason.CONFLICT,
          "is a volume, and the point has no vessel",
          "give the vessel, or write a level such as 6 m");
      return Double.NaN;
    }
    return fromVolume(volume, vessel.get());
  }

  private double fromVolume(double volume, CapacityCurve vessel) {
    if (!(volume >= 0 && volume <= vessel.capacityCubicMetres())) {
      keys.error(
          "at",
          Reason.OUT_OF_RANGE,
          "lies outside the vessel, which holds "
              + Figures.cubicMetres(vessel.capacityCubicMetres()),
          "write a volume that the vessel can hold");
      return Double.NaN;
    }
    return vessel.heightMetres(volume);
  }

  private void refuseOutside(double level, Geometry known) {
    known.vesselLevels().ifPresent(band -> refuseOutside(level, band, "the vessel"));
    known.rangeLevels().ifPresent(band -> refuseOutside(level, band, "the range"));
  }

  private void refuseOutside(double level, Band band, String what) {
    if (!band.covers(level)) {
      keys.error(
          "at",
          Reason.OUT_OF_RANGE,
          "is a level of "
              + Figures.metres(level)
              + ", outside "
              + what
              + " ("
              + Figures.metres(band.bottomMetres())
              + " to "
              + Figures.metres(band.topMetres())
              + ")",
          "write a level that can be reached");
    }
  }
}
