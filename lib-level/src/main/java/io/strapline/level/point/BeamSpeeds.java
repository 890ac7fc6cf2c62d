package io.strapline.level.point;

import io.strapline.level.signal.RateSettings;
import io.strapline.level.signal.SpeedLimits;
import io.strapline.level.vessel.CapacityCurve;
import org.jspecify.annotations.Nullable;

/**
 * The greatest speeds of the surface along the beam. A speed v upright is {@code v / cos(beam
 * angle)} along it; a flow Q moves a surface of the area A by {@code Q / A} (both derived here).
 * The area is the slope of the vessel's own volume, taken over a thousandth of its height; outside
 * the vessel the area of the nearest end counts. Immutable.
 */
record BeamSpeeds(RateSettings rates, Mounting mounting, @Nullable CapacityCurve vessel)
    implements SpeedLimits {

  private static final double PART_OF_HEIGHT = 1e-3;

  /** Returns the limits of a point; none when it sets none. */
  static SpeedLimits of(PointSettings settings) {
    CapacityCurve vessel = settings.vessel().orElse(null);
    return settings
        .signal()
        .surface()
        .rates()
        .<SpeedLimits>map(rates -> new BeamSpeeds(rates, settings.mounting(), vessel))
        .orElse(SpeedLimits.NONE);
  }

  @Override
  public double nearing(double distanceMetres) {
    return along(rates.rise(), distanceMetres);
  }

  @Override
  public double leaving(double distanceMetres) {
    return along(rates.fall(), distanceMetres);
  }

  private double along(double limit, double distanceMetres) {
    double upright =
        switch (rates.measure()) {
          case SPEED -> limit;
          case FLOW -> limit / areaSquareMetres(mounting.levelMetres(distanceMetres));
        };
    return upright / mounting.ullageMetres(1);
  }

  private double areaSquareMetres(double levelMetres) {
    if (vessel == null) {
      return 0;
    }
    double part = PART_OF_HEIGHT * vessel.maxHeightMetres();
    double middle = Math.max(part / 2, Math.min(levelMetres, vessel.maxHeightMetres() - part / 2));
    double below = vessel.volumeCubicMetres(middle - part / 2);
    return Math.max(0, (vessel.volumeCubicMetres(middle + part / 2) - below) / part);
  }
}
