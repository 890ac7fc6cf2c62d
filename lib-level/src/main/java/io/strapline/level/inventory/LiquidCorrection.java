package io.strapline.level.inventory;

/**
 * Corrections of a liquid's observed volume to its base temperature and atmospheric pressure.
 * Immutable and safe for any thread.
 */
public sealed interface LiquidCorrection permits LiquidCorrection1980, LiquidCorrection2004 {

  /** Returns the density at the base, which is also what makes mass of the corrected volume. */
  StandardDensity density();

  /**
   * Returns CTL, the factor from the volume at a temperature to the volume at the base temperature.
   *
   * @param celsius temperature of the liquid in degC, in the range that the form states
   * @throws IllegalArgumentException if the temperature is outside that range
   */
  double ctl(double celsius);

  /**
   * Returns CPL, the factor from the volume under pressure to the volume at atmospheric pressure; 1
   * at gauge pressure zero.
   *
   * @param celsius temperature of the liquid in degC, in the range that the form states
   * @param gaugePascals pressure above that of the air, in pascals
   * @throws IllegalArgumentException if temperature or pressure are outside the form's range
   */
  double cpl(double celsius, double gaugePascals);
}
