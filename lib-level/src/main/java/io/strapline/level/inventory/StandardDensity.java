package io.strapline.level.inventory;

import io.strapline.level.internal.Check;

/**
 * Density of a liquid at a base temperature and atmospheric pressure. The base is part of the
 * value, so that constants of another base cannot be used on it. Immutable.
 *
 * <p>From API gravity: {@code rho60 = 141.5 x water / (131.5 + API)}, water at 60 degF being
 * 999.012 kg/m3 in the 1980 form and 999.016 kg/m3 in the 2004 form (API MPMS 11.1 as quoted in L.
 * Bennett, Elementary orifice flow measurement, open draft 2023).
 *
 * @param kilogramsPerCubicMetre in [{@value #LEAST}, {@value #GREATEST}] kg/m3
 * @param base temperature that the density belongs to
 */
public record StandardDensity(double kilogramsPerCubicMetre, StandardBase base) {

  /** Least density of a liquid that is accepted, in kg/m3. */
  public static final double LEAST = 400;

  /** Greatest density of a liquid or slurry that is accepted, in kg/m3. */
  public static final double GREATEST = 3_000;

  private static final double WATER_1980 = 999.012;
  private static final double WATER_2004 = 999.016;
  private static final double LEAST_API = -10;
  private static final double GREATEST_API = 100;

  /** Refuses what cannot be the density of a liquid. */
  public StandardDensity {
    Check.between(
        "StandardDensity.value",
        kilogramsPerCubicMetre,
        "kg/m3",
        LEAST,
        GREATEST,
        "give the density at the base temperature in kg/m3 (1 g/cm3 is 1000 kg/m3)");
    Check.present("StandardDensity.base", base, "say which base temperature");
  }

  /** Returns a density at 60 degF. */
  public static StandardDensity at60Fahrenheit(double kilogramsPerCubicMetre) {
    return new StandardDensity(kilogramsPerCubicMetre, StandardBase.SIXTY_FAHRENHEIT);
  }

  /** Returns a density at 15 degC. */
  public static StandardDensity at15Celsius(double kilogramsPerCubicMetre) {
    return new StandardDensity(kilogramsPerCubicMetre, StandardBase.FIFTEEN_CELSIUS);
  }

  /**
   * Returns the density at 60 degF of an API gravity, 1980 form.
   *
   * @param gravity in degrees API, in [-10, 100]
   * @throws IllegalArgumentException if the gravity is out of its range
   */
  public static StandardDensity ofApiGravity1980(double gravity) {
    return ofApiGravity(gravity, WATER_1980);
  }

  /**
   * Returns the density at 60 degF of an API gravity, 2004 form.
   *
   * @param gravity in degrees API, in [-10, 100]
   * @throws IllegalArgumentException if the gravity is out of its range
   */
  public static StandardDensity ofApiGravity2004(double gravity) {
    return ofApiGravity(gravity, WATER_2004);
  }

  private static StandardDensity ofApiGravity(double gravity, double water) {
    Check.between(
        "StandardDensity.apiGravity",
        gravity,
        "degAPI",
        LEAST_API,
        GREATEST_API,
        "give the API gravity at 60 degF, not a density");
    return at60Fahrenheit(141.5 * water / (131.5 + gravity));
  }
}
