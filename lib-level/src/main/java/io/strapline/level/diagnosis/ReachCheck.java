package io.strapline.level.diagnosis;

import io.strapline.level.internal.Check;

/**
 * When the transmitter does not reach the bottom of the vessel. Immutable.
 *
 * @param bottomMetres distance along the beam to the bottom; finite, greater than zero
 * @param marginMetres a return that vanishes nearer than the bottom by more than this vanishes too
 *     early, if the surface went away by more than the same over the window; finite, zero or more
 * @param zeroStrength a strength up to this is none; finite, zero or more
 * @param windowSeconds over how long the movement is taken; finite, greater than zero
 * @param holdOff hold-off times
 */
public record ReachCheck(
    double bottomMetres,
    double marginMetres,
    double zeroStrength,
    double windowSeconds,
    HoldOff holdOff) {

  /** Checks the settings. */
  public ReachCheck {
    Check.positive("ReachCheck.bottom", bottomMetres, "m", "enter the distance to the bottom");
    marginMetres = Check.notNegative("ReachCheck.margin", marginMetres, "m", "enter such as 0.5");
    zeroStrength =
        Check.notNegative(
            "ReachCheck.zeroStrength", zeroStrength, "", "enter 0 if it is exactly 0");
    Check.positive("ReachCheck.window", windowSeconds, "s", "enter several sample intervals");
    Check.present("ReachCheck.holdOff", holdOff, "give the hold-off times");
  }
}
