package io.strapline.bridge.publish.opcua;

import io.strapline.level.loop.LoopRange;
import io.strapline.level.point.Mounting;
import io.strapline.level.point.PointSettings;
import io.strapline.level.signal.GateSettings;

/** What the values of a measuring point span, out of its configuration. Immutable. */
final class Ranges {

  private final PointSettings settings;
  private final Mounting mounting;
  private final GateSettings gates;

  Ranges(PointSettings settings) {
    this.settings = settings;
    mounting = settings.mounting();
    gates = settings.signal().gates();
  }

  /** Returns the distances from the reference point to the farthest surface. */
  Span distance() {
    return new Span(0, farEnd());
  }

  Span ullage() {
    return new Span(0, mounting.ullageMetres(farEnd()));
  }

  /** Returns the distances that the transmitter can measure, as far as they are configured. */
  Span measurableDistance() {
    return new Span(gates.deadZoneMetres(), gates.farLimitMetres());
  }

  /** Returns the levels of the vessel; without one those of the range or of the beam. */
  Span level() {
    return settings
        .vessel()
        .map(vessel -> new Span(0, vessel.maxHeightMetres()))
        .or(() -> settings.range().map(this::levels))
        .orElseGet(() -> Span.between(mounting.levelMetres(farEnd()), mounting.levelMetres(0)));
  }

  private Span levels(LoopRange range) {
    return range.measure() == LoopRange.Measure.LEVEL
        ? Span.between(range.lowerMetres(), range.upperMetres())
        : Span.between(
            mounting.levelMetres(range.lowerMetres()), mounting.levelMetres(range.upperMetres()));
  }

  /** Returns the far limit, else the distance to the datum, else the far end of the range. */
  private double farEnd() {
    if (Double.isFinite(gates.farLimitMetres())) {
      return gates.farLimitMetres();
    }
    double datum = mounting.distanceMetres(0);
    return datum > 0 ? datum : settings.range().map(this::farEnd).orElse(0.0);
  }

  private double farEnd(LoopRange range) {
    return range.measure() == LoopRange.Measure.DISTANCE
        ? Math.max(range.lowerMetres(), range.upperMetres())
        : mounting.distanceMetres(Math.min(range.lowerMetres(), range.upperMetres()));
  }

  /** Returns the volumes from empty to full; improper without a vessel. */
  Span volume() {
    return new Span(0, settings.vessel().map(v -> v.capacityCubicMetres()).orElse(0.0));
  }

  Span mass() {
    return new Span(0, settings.greatestMassKilograms().orElse(0));
  }

  /** Returns the currents that carry a measurement. */
  Span measurableCurrent() {
    return new Span(settings.loopLimits().underRange(), settings.loopLimits().overRange());
  }
}
