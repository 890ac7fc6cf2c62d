package io.strapline.level.diagnosis;

import io.strapline.level.internal.Check;

/**
 * When the distance changes faster than the surface can. Immutable.
 *
 * @param nearing greatest speed towards the transmitter in m/s; finite, greater than zero
 * @param leaving greatest speed away from it in m/s; finite, greater than zero
 * @param windowSeconds over how long the speed is taken; finite, greater than zero
 * @param resolutionMetres change that is no movement (noise and steps of the device), taken off
 *     before dividing; finite, zero or more
 * @param holdOff hold-off times; a single step that stays is told only if its on-time is shorter
 *     than the window, since afterwards the window holds the new distance alone
 */
public record RateCheck(
    double nearing,
    double leaving,
    double windowSeconds,
    double resolutionMetres,
    HoldOff holdOff) {

  /** Checks the settings. */
  public RateCheck {
    String fix = "enter the greatest that the plant can do, with a reserve";
    Check.positive("RateCheck.nearing", nearing, "m/s", fix);
    Check.positive("RateCheck.leaving", leaving, "m/s", fix);
    Check.positive("RateCheck.window", windowSeconds, "s", "enter several sample intervals");
    resolutionMetres =
        Check.notNegative(
            "RateCheck.resolution", resolutionMetres, "m", "enter six times the noise");
    Check.present("RateCheck.holdOff", holdOff, "give the hold-off times");
  }
}
