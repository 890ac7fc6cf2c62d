package io.strapline.level.diagnosis;

import io.strapline.level.internal.Check;

/**
 * What is usual at one measuring point, to be kept over a restart. Immutable. Learn it anew ({@link
 * #NOTHING}) after the window was cleaned, the transmitter moved or the material changed.
 *
 * @param strength usual strength of the return in the device's own unit, zero or more
 * @param strengthSeconds for how long it was learned, zero or more
 * @param noiseMetres usual standard deviation of the distance, zero or more
 * @param noiseSeconds for how long it was learned, zero or more
 */
public record Baseline(
    double strength, double strengthSeconds, double noiseMetres, double noiseSeconds) {

  /** Nothing learned yet. */
  public static final Baseline NOTHING = new Baseline(0, 0, 0, 0);

  /** Checks all numbers. */
  public Baseline {
    String fix = "enter what was kept, or start with nothing";
    strength = Check.notNegative("Baseline.strength", strength, "", fix);
    strengthSeconds = Check.notNegative("Baseline.strengthTime", strengthSeconds, "s", fix);
    noiseMetres = Check.notNegative("Baseline.noise", noiseMetres, "m", fix);
    noiseSeconds = Check.notNegative("Baseline.noiseTime", noiseSeconds, "s", fix);
  }
}
