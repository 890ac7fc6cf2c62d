package io.strapline.level.diagnosis;

import io.strapline.level.internal.Check;

/**
 * When a value stands still that should move. Immutable.
 *
 * @param bandMetres a value within this band stands still; finite, greater than zero
 * @param flowSeconds stuck after so long while a flow is expected; finite, greater than zero
 * @param frozenSeconds stuck after so long with exactly the same value, flow or none; zero for
 *     never, as with a device that rounds coarser than its noise
 */
public record StuckCheck(double bandMetres, double flowSeconds, double frozenSeconds) {

  /** Checks the settings. */
  public StuckCheck {
    Check.positive("StuckCheck.band", bandMetres, "m", "enter a few times the noise");
    Check.positive(
        "StuckCheck.flowTime",
        flowSeconds,
        "s",
        "enter how long the least flow takes for the band");
    frozenSeconds =
        Check.notNegative("StuckCheck.frozenTime", frozenSeconds, "s", "enter 0 for never");
  }
}
