package io.strapline.level.signal;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Reading;

/**
 * Tells what a lost beam means from where the surface was and where it went. Stateful, one thread
 * at a time.
 *
 * <p>With the last believed distance d, its speed v over the horizon H, and the margin m: over-full
 * is suspected when {@code d + min(0, v H) <= dead zone + m}, unless the surface leaves ({@code v H
 * > m}); empty is suspected when {@code d + max(0, v H) >= far limit - m}, unless the surface comes
 * nearer ({@code v H < -m}). Derived here. Where both hold, over-full prevails: the wrong alarm
 * costs less than the missing one.
 */
final class LostBeam {

  private final GateSettings gates;
  private final LostBeamSettings settings;
  private final SurfaceTrend trend;
  private double last;
  private boolean seen;

  LostBeam(GateSettings gates, LostBeamSettings settings) {
    this.gates = gates;
    this.settings = settings;
    trend = new SurfaceTrend(settings.horizonSeconds());
  }

  /** Takes a believed distance; what came before a jump does not tell how the surface moves. */
  void believe(Reading reading, boolean jumped) {
    if (jumped) {
      trend.reset();
    }
    last = reading.value();
    seen = true;
    trend.add(reading);
  }

  /** Returns what a beam that is lost now lets suspect; NONE for nothing. */
  Cause suspicion() {
    if (!seen) {
      return Cause.NONE;
    }
    double way = trend.metresPerSecond() * settings.horizonSeconds();
    double margin = settings.marginMetres();
    if (way <= margin && last + Math.min(0, way) <= gates.deadZoneMetres() + margin) {
      return Cause.OVERFULL_SUSPECTED;
    }
    if (way >= -margin && last + Math.max(0, way) >= gates.farLimitMetres() - margin) {
      return Cause.EMPTY_SUSPECTED;
    }
    return Cause.NONE;
  }

  void reset() {
    seen = false;
    trend.reset();
  }
}
