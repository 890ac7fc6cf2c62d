package io.strapline.level.signal;

import io.strapline.level.internal.Check;

/**
 * When a lost beam means more than a lost beam. Immutable.
 *
 * @param marginMetres a surface this close to the dead zone or to the far limit is about to enter
 *     it; finite, zero or more
 * @param horizonSeconds how far ahead the surface's movement is carried on, and over how long it is
 *     measured; finite, greater than zero
 */
public record LostBeamSettings(double marginMetres, double horizonSeconds) {

  /**
   * Checks both numbers.
   *
   * @throws IllegalArgumentException naming the setting that breaks its rule
   */
  public LostBeamSettings {
    marginMetres =
        Check.notNegative(
            "LostBeamSettings.margin",
            marginMetres,
            "m",
            "enter such as 0.2, 0 for the trend only");
    Check.positive(
        "LostBeamSettings.horizon",
        horizonSeconds,
        "s",
        "enter over how long the surface's movement is measured and carried on");
  }
}
