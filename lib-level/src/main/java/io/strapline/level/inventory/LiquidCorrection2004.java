package io.strapline.level.inventory;

import io.strapline.level.internal.Check;

/**
 * Temperature and pressure correction of petroleum liquids, 2004 form, on the 60 degF base.
 * Immutable.
 *
 * <p>{@code CTL = exp(-a dt (1 + 0.8 a (dt + D)))} with {@code D = 0.01374979547} degF, {@code dt =
 * t* - 60.0068749} degF, and {@code CPL = 1 / (1 - 1e-5 F P)} with {@code F = exp(-1.9947 +
 * 0.00013427 t* + (793920 + 2326 t*) / rho*^2)} per 1e5 psi and P in psi (L. Bennett, Elementary
 * orifice flow measurement, open draft 2023). t* and rho* are temperature and density on the older
 * temperature scale that the constants were fitted on; the shift of the scale and of the density
 * are those of API MPMS 11.1 (2004), sections 11.1.5.3 and 11.1.6.1, as several public
 * implementations agree on them. At 60 degF t* is 60.0068749 degF, which makes CTL 1. Nothing is
 * rounded.
 *
 * <p>Ranges: -58 degF to 302 degF (-50 to 150 degC), 0 to 1500 psi gauge (0 to 10.34 MPa),
 * densities by {@link ProductGroup}; from the same implementations.
 */
public final class LiquidCorrection2004 implements LiquidCorrection {

  private static final double LEAST_CELSIUS = -50;
  private static final double GREATEST_CELSIUS = 150;
  private static final double GREATEST_PSI = 1500;
  // 0.453 592 37 kg x 9.806 65 m/s2 over the square of 0.0254 m.
  private static final double PASCALS_PER_PSI = 0.45359237 * 9.80665 / (0.0254 * 0.0254);

  private static final double BASE = 60.0068749;
  private static final double SHIFT = 0.01374979547;
  private static final double[] SCALE = {
    -0.148759, -0.267408, 1.080760, 1.269056, -4.089591, -1.871251, 7.438081, -3.536296
  };

  private final StandardDensity density;
  private final double shiftedDensity;
  private final double alpha;

  private LiquidCorrection2004(ProductGroup group, StandardDensity density) {
    ExpansionConstants k = group.constants(StandardBase.SIXTY_FAHRENHEIT);
    this.density = density;
    this.shiftedDensity = shifted(k, density.kilogramsPerCubicMetre());
    this.alpha = k.alpha(shiftedDensity);
  }

  /**
   * Returns the correction of a liquid.
   *
   * @param density at 60 degF
   * @throws IllegalArgumentException if the density is on another base or the group does not hold
   *     for it
   */
  public static LiquidCorrection2004 of(ProductGroup group, StandardDensity density) {
    Check.present("LiquidCorrection2004.group", group, "name the product group");
    Check.present("LiquidCorrection2004.density", density, "give the density at 60 degF");
    if (density.base() != StandardBase.SIXTY_FAHRENHEIT) {
      throw Check.error(
          "LiquidCorrection2004.base",
          density.base().text(),
          "",
          "must be 60 degF",
          "give the density at 60 degF, or use the 1980 form with 15 degC");
    }
    return new LiquidCorrection2004(group, group.checked(density));
  }

  @Override
  public StandardDensity density() {
    return density;
  }

  @Override
  public double ctl(double celsius) {
    double above = shifted(checked(celsius)) - BASE;
    return Math.exp(-alpha * above * (1 + 0.8 * alpha * (above + SHIFT)));
  }

  @Override
  public double cpl(double celsius, double gaugePascals) {
    double psi =
        Check.between(
                "LiquidCorrection2004.pressure",
                gaugePascals,
                "Pa",
                0,
                GREATEST_PSI * PASCALS_PER_PSI,
                "give the gauge pressure, zero for an open tank")
            / PASCALS_PER_PSI;
    double t = shifted(checked(celsius));
    double squared = shiftedDensity * shiftedDensity;
    double compressibility = Math.exp(-1.9947 + 0.00013427 * t + (793_920 + 2_326 * t) / squared);
    return 1 / (1 - 1e-5 * compressibility * psi);
  }

  // Density at 60 degF of the older scale.
  private static double shifted(ExpansionConstants k, double rho) {
    double a = SHIFT / 2 * k.alpha(rho);
    double b = (2 * k.k0() + k.k1() * rho) / (k.k0() + (k.k1() + k.k2() * rho) * rho);
    return rho * (1 + Math.expm1(a * (1 + 0.8 * a)) / (1 + a * (1 + 1.6 * a) * b));
  }

  // Temperature in degF of the older scale: a polynomial without constant term in t / 630 degC.
  private static double shifted(double celsius) {
    double tau = celsius / 630;
    double difference = 0;
    for (int i = SCALE.length - 1; i >= 0; i--) {
      difference = (difference + SCALE[i]) * tau;
    }
    return 1.8 * (celsius - difference) + 32;
  }

  private static double checked(double celsius) {
    return Check.between(
        "LiquidCorrection2004.temperature",
        celsius,
        "degC",
        LEAST_CELSIUS,
        GREATEST_CELSIUS,
        "check the thermometer and its unit");
  }
}
