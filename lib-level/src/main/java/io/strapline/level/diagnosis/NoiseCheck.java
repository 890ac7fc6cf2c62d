package io.strapline.level.diagnosis;

import io.strapline.level.internal.Check;

/**
 * When the distance scatters more than usual. Immutable.
 *
 * @param factor more than this many times the baseline; finite, greater than 1
 * @param leastMetres and more than this, so that a very quiet signal may double; finite, zero or
 *     more
 * @param learning how the baseline is learned
 * @param holdOff hold-off times
 */
public record NoiseCheck(double factor, double leastMetres, Learning learning, HoldOff holdOff) {

  /** Three times the baseline and 20 mm for a minute: common practice, no source. */
  public static final NoiseCheck USUAL = new NoiseCheck(3, 0.02, Learning.USUAL, HoldOff.MINUTE);

  /** Checks the settings. */
  public NoiseCheck {
    if (!(Double.isFinite(factor) && factor > 1)) {
      throw Check.error(
          "NoiseCheck.factor", factor, "", "must be greater than 1", "enter such as 3");
    }
    leastMetres =
        Check.notNegative("NoiseCheck.least", leastMetres, "m", "enter a noise that is no trouble");
    Check.present("NoiseCheck.learning", learning, "say how the baseline is learned");
    Check.present("NoiseCheck.holdOff", holdOff, "give the hold-off times");
  }
}
