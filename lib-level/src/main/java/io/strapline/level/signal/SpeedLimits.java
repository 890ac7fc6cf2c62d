package io.strapline.level.signal;

import io.strapline.level.internal.Check;

/**
 * How fast the distance along the beam may change at most, at each distance. Implementations are
 * immutable. Positive infinity means no limit there.
 */
public interface SpeedLimits {

  /**
   * Returns the greatest speed of a surface that comes nearer, in m/s along the beam, greater than
   * zero.
   *
   * @param distanceMetres along the beam, finite
   */
  double nearing(double distanceMetres);

  /**
   * Returns the greatest speed of a surface that goes away, in m/s along the beam, greater than
   * zero.
   *
   * @param distanceMetres along the beam, finite
   */
  double leaving(double distanceMetres);

  /** No limit at any distance. */
  SpeedLimits NONE = constant(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);

  /**
   * Returns limits that are the same at every distance.
   *
   * @param nearing m/s along the beam, greater than zero, infinite for no limit
   * @param leaving m/s along the beam, greater than zero, infinite for no limit
   */
  static SpeedLimits constant(double nearing, double leaving) {
    checkSpeed("SpeedLimits.nearing", nearing);
    checkSpeed("SpeedLimits.leaving", leaving);
    return new SpeedLimits() {
      @Override
      public double nearing(double distanceMetres) {
        return nearing;
      }

      @Override
      public double leaving(double distanceMetres) {
        return leaving;
      }
    };
  }

  private static void checkSpeed(String field, double speed) {
    if (!(speed > 0)) {
      throw Check.error(
          field, speed, "m/s", "must be greater than zero", "enter infinity for no limit");
    }
  }
}
