package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import io.strapline.level.loop.LoopRange;
import io.strapline.level.uncertainty.Influence;
import io.strapline.level.uncertainty.UncertaintySource;
import io.strapline.level.units.Dimension;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Reads the greatest errors of a point, each of which counts as a rectangular distribution between
 * plus and minus its value. Not thread-safe.
 */
final class AccuracyReader {

  private static final double USUAL_COVERAGE = 2;

  private final Section keys;
  private final List<UncertaintySource> sources = new ArrayList<>();

  /** Takes the section of the errors. */
  AccuracyReader(Section keys) {
    this.keys = keys;
  }

  /**
   * Returns the errors; empty after a problem.
   *
   * @param geometry of the point, unless it has problems of its own
   * @param density of the material in kg/m3, if there is one
   */
  Optional<Accuracy> read(Optional<Geometry> geometry, OptionalDouble density) {
    add("transmitter", Dimension.LENGTH, Influence.DISTANCE, 1);
    add("reference-height", Dimension.LENGTH, Influence.REFERENCE_HEIGHT, 1);
    add("beam-angle", Dimension.ANGLE, Influence.TILT, 1);
    add("surface", Dimension.LENGTH, Influence.SURFACE, 1);
    geometry.ifPresent(this::addLoop);
    boolean whole = geometry.isPresent();
    addPart("vessel", Influence.VOLUME_PART, known(geometry.flatMap(Geometry::vessel)), whole);
    addPart("density", Influence.DENSITY, density, whole);
    double coverage = keys.has("coverage-factor") ? keys.number("coverage-factor") : USUAL_COVERAGE;
    if (!(coverage >= 1 && coverage <= 10) && keys.isSound()) {
      keys.error(
          "coverage-factor",
          Reason.OUT_OF_RANGE,
          "must lie between 1 and 10",
          "write k, usually 2");
    }
    if (sources.isEmpty() && keys.isSound() && geometry.isPresent()) {
      keys.problems()
          .error(
              keys.place("coverage-factor").at(keys.path()),
              Reason.MISSING,
              "tells no error",
              "give one at least, such as transmitter: 5 mm");
    }
    return keys.build(() -> new Accuracy(sources, coverage));
  }

  private static OptionalDouble known(Optional<?> vessel) {
    return vessel.isPresent() ? OptionalDouble.of(1) : OptionalDouble.empty();
  }

  private void add(String key, Dimension dimension, Influence influence, double factor) {
    OptionalDouble error = keys.optionalQuantity(key, dimension);
    if (error.isEmpty() || Double.isNaN(error.getAsDouble())) {
      return;
    }
    if (error.getAsDouble() < 0) {
      keys.error(
          key, Reason.OUT_OF_RANGE, "must be zero or greater", "write the greatest error, no sign");
      return;
    }
    double halfWidth = error.getAsDouble() * factor;
    if (!Double.isFinite(halfWidth)) {
      // What it is a part of has a problem of its own.
      return;
    }
    sources.add(UncertaintySource.rectangular(key.replace('-', ' '), influence, halfWidth));
  }

  /** A percentage of something that the point must have, unless the point has a problem anyway. */
  private void addPart(String key, Influence influence, OptionalDouble whole, boolean pointSound) {
    if (keys.has(key) && whole.isEmpty() && pointSound && keys.isSound()) {
      String what = key.equals("vessel") ? "vessel" : "constant density";
      keys.error(
          key, Reason.CONFLICT, "needs a " + what, "give the " + what + ", or remove this key");
      return;
    }
    add(key, Dimension.RATIO, influence, whole.orElse(Double.NaN) / 100);
  }

  private void addLoop(Geometry geometry) {
    boolean given = keys.has("loop") || keys.has("loop-counts");
    if (given && geometry.range().isEmpty()) {
      String key = keys.has("loop") ? "loop" : "loop-counts";
      keys.error(
          key, Reason.CONFLICT, "needs a range", "give the range of the point, or remove this key");
      return;
    }
    geometry.range().ifPresent(this::addLoop);
  }

  private void addLoop(LoopRange range) {
    double span = Math.abs(range.upperMetres() - range.lowerMetres());
    // An error of the current acts on what the current stands for.
    Influence influence =
        range.measure() == LoopRange.Measure.DISTANCE
            ? Influence.DISTANCE
            : Influence.REFERENCE_HEIGHT;
    add("loop", Dimension.RATIO, influence, span / 100);
    if (keys.has("loop-counts")) {
      double counts = keys.number("loop-counts");
      if (counts < 1) {
        keys.error(
            "loop-counts",
            Reason.OUT_OF_RANGE,
            "must be 1 or more",
            "write how many counts lie between 4 and 20 mA");
      } else if (Double.isFinite(span / counts)) {
        double half = span / counts / 2;
        sources.add(UncertaintySource.rectangular("loop counts", influence, half));
      }
    }
  }
}
