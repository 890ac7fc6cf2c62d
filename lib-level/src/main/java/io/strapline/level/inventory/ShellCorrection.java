package io.strapline.level.inventory;

import io.strapline.level.internal.Check;

/**
 * Correction of an upright cylindrical tank's capacity for the temperature of its shell. Not for
 * spheres, lying cylinders or box-shaped tanks. Immutable.
 *
 * <p>{@code TSh = (7 TL + TA) / 8} for a bare shell, the liquid's temperature for an insulated one,
 * rounded to the whole degree of the base's scale, half up; {@code CTSh = 1 + 2 a dT + a^2 dT^2},
 * dT the shell's temperature above the reference (petroleum inspection training handbook quoting
 * API MPMS 12.1.1). The reference must be the one that the capacity table was made for.
 *
 * @param steel the shell's steel
 * @param reference temperature that the capacity table was made for
 * @param insulated whether the shell is insulated
 */
public record ShellCorrection(ShellSteel steel, StandardBase reference, boolean insulated) {

  private static final double COLDEST = -200;
  private static final double HOTTEST_LIQUID = 400;
  private static final double HOTTEST_AIR = 70;

  // Halves must not fall to the last bit of the conversion of scales.
  private static final double HALF = 0.5 + 1e-9;

  /** Refuses a correction without steel or reference. */
  public ShellCorrection {
    Check.present("ShellCorrection.steel", steel, "name the steel");
    Check.present("ShellCorrection.reference", reference, "say which reference temperature");
  }

  /**
   * Returns the temperature of the shell before rounding, in degC.
   *
   * @param liquidCelsius temperature of the liquid, in [-200, 400] degC
   * @param ambientCelsius temperature of the air, in [-200, 70] degC; checked and not used when
   *     insulated
   * @throws IllegalArgumentException if a temperature is out of its range
   */
  public double shellCelsius(double liquidCelsius, double ambientCelsius) {
    Check.between(
        "ShellCorrection.liquid",
        liquidCelsius,
        "degC",
        COLDEST,
        HOTTEST_LIQUID,
        "check the thermometer in the liquid and its unit");
    Check.between(
        "ShellCorrection.ambient",
        ambientCelsius,
        "degC",
        COLDEST,
        HOTTEST_AIR,
        "check the thermometer in the air and its unit");
    return insulated ? liquidCelsius : (7 * liquidCelsius + ambientCelsius) / 8;
  }

  /** Returns CTSh with the shell's temperature rounded to the degree, see {@link #shellCelsius}. */
  public double factor(double liquidCelsius, double ambientCelsius) {
    double degrees = reference.unit().fromSi(shellCelsius(liquidCelsius, ambientCelsius));
    return expansion(Math.floor(degrees + HALF) - reference.degrees());
  }

  /** Returns CTSh without rounding, see {@link #shellCelsius}. */
  public double unroundedFactor(double liquidCelsius, double ambientCelsius) {
    return expansion(reference.above(shellCelsius(liquidCelsius, ambientCelsius)));
  }

  private double expansion(double degrees) {
    double strain = steel.perDegree(reference) * degrees;
    return 1 + 2 * strain + strain * strain;
  }
}
