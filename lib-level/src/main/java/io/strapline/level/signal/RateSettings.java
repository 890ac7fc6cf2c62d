package io.strapline.level.signal;

import io.strapline.level.internal.Check;

/**
 * How fast the surface can rise and fall at most. Immutable.
 *
 * @param measure what {@code rise} and {@code fall} are
 * @param rise greatest believable rise of the surface: m/s upright, or m3/s into the vessel;
 *     finite, greater than zero
 * @param fall greatest believable fall: m/s upright, or m3/s out of the vessel; finite, greater
 *     than zero
 * @param toleranceMetres the output may differ from the signal by this much without being marked,
 *     so that plain noise is no excess of rate; finite, zero or more
 */
public record RateSettings(Measure measure, double rise, double fall, double toleranceMetres) {

  /** What the limits are. */
  public enum Measure {
    /** Speed of the surface, in m/s. */
    SPEED("m/s"),
    /** Flow in and out, in m3/s; the vessel's own area at that height makes a speed of it. */
    FLOW("m3/s");

    private final String unit;

    Measure(String unit) {
      this.unit = unit;
    }

    /** Returns the unit of the limits. */
    public String unit() {
      return unit;
    }
  }

  /**
   * Checks the numbers.
   *
   * @throws IllegalArgumentException naming the setting that breaks its rule
   */
  public RateSettings {
    Check.present("RateSettings.measure", measure, "give SPEED or FLOW");
    String fix = "enter the greatest that the plant can do, with a reserve";
    Check.positive("RateSettings.rise", rise, measure.unit(), fix);
    Check.positive("RateSettings.fall", fall, measure.unit(), fix);
    toleranceMetres =
        Check.notNegative(
            "RateSettings.tolerance", toleranceMetres, "m", "enter three to six times the noise");
  }

  /** Returns limits given as speeds of the surface in m/s. */
  public static RateSettings speed(double rise, double fall, double toleranceMetres) {
    return new RateSettings(Measure.SPEED, rise, fall, toleranceMetres);
  }

  /** Returns limits given as flows in m3/s. */
  public static RateSettings flow(double in, double out, double toleranceMetres) {
    return new RateSettings(Measure.FLOW, in, out, toleranceMetres);
  }
}
