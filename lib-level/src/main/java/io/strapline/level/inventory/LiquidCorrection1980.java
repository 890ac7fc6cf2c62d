package io.strapline.level.inventory;

import io.strapline.level.internal.Check;

/**
 * Temperature correction of petroleum liquids, 1980 form: {@code alpha = K0 / rho^2 + K1 / rho +
 * K2}, {@code CTL = exp(-alpha dt (1 + 0.8 alpha dt))}, dt the temperature above the base in
 * degrees of the base's own scale, rho the density at the base (API 2540 as quoted in L. Bennett,
 * Elementary orifice flow measurement, open draft 2023). Density, alpha and temperature are not
 * rounded, so that the printed tables are met to their last digit but one. Immutable.
 *
 * <p>Temperatures: 0 degF to 300 degF at 60 degF base (250 degF above 40 degAPI, 200 degF above 50
 * degAPI), -18 degC to 150 degC at 15 degC base (120 degC below 824 kg/m3, 90 degC below 778.5
 * kg/m3); lubricating oils have the full range. These ends are read from a public implementation of
 * the tables, not from the tables themselves.
 */
public final class LiquidCorrection1980 implements LiquidCorrection {

  private static final double MIDDLE_15 = 824.0;
  private static final double LIGHT_15 = 778.5;
  private static final double MIDDLE_60 =
      StandardDensity.ofApiGravity1980(40).kilogramsPerCubicMetre();
  private static final double LIGHT_60 =
      StandardDensity.ofApiGravity1980(50).kilogramsPerCubicMetre();

  private final StandardDensity density;
  private final double alpha;
  private final double least;
  private final double greatest;

  private LiquidCorrection1980(ProductGroup group, StandardDensity density) {
    StandardBase base = density.base();
    this.density = density;
    this.alpha = group.constants(base).alpha(density.kilogramsPerCubicMetre());
    this.least = base == StandardBase.SIXTY_FAHRENHEIT ? 0 : -18;
    this.greatest = greatest(group, density);
  }

  /**
   * Returns the correction of a liquid.
   *
   * @throws IllegalArgumentException if the group does not hold for the density
   */
  public static LiquidCorrection1980 of(ProductGroup group, StandardDensity density) {
    Check.present("LiquidCorrection1980.group", group, "name the product group");
    Check.present("LiquidCorrection1980.density", density, "give the density at the base");
    return new LiquidCorrection1980(group, group.checked(density));
  }

  private static double greatest(ProductGroup group, StandardDensity density) {
    boolean fahrenheit = density.base() == StandardBase.SIXTY_FAHRENHEIT;
    double full = fahrenheit ? 300 : 150;
    double step = fahrenheit ? 50 : 30;
    if (group == ProductGroup.LUBRICATING_OIL) {
      return full;
    }
    double rho = density.kilogramsPerCubicMetre();
    double middle = fahrenheit ? MIDDLE_60 : MIDDLE_15;
    double light = fahrenheit ? LIGHT_60 : LIGHT_15;
    return full - (rho < light ? 2 * step : rho < middle ? step : 0);
  }

  @Override
  public StandardDensity density() {
    return density;
  }

  /** Returns the expansion coefficient at the base, per degree of the base's scale. */
  public double alpha() {
    return alpha;
  }

  @Override
  public double ctl(double celsius) {
    double above = density.base().above(checked(celsius));
    return Math.exp(-alpha * above * (1 + 0.8 * alpha * above));
  }

  /**
   * Returns 1: this form has no pressure correction.
   *
   * @throws IllegalArgumentException if the gauge pressure is not zero
   */
  @Override
  public double cpl(double celsius, double gaugePascals) {
    checked(celsius);
    if (gaugePascals != 0) {
      throw Check.error(
          "LiquidCorrection1980.pressure",
          gaugePascals,
          "Pa",
          "must be zero, this form corrects temperature only",
          "use the 2004 form for liquids under pressure");
    }
    return 1;
  }

  private double checked(double celsius) {
    double degrees = density.base().unit().fromSi(celsius);
    // The ends are included although conversion may miss them by a last bit.
    if (!(degrees >= least - 1e-9 && degrees <= greatest + 1e-9)) {
      String unit = density.base().unit().asciiSymbol();
      throw Check.error(
          "LiquidCorrection1980.temperature",
          degrees,
          unit,
          "must lie between " + least + " and " + greatest + " " + unit + " at this density",
          "check the thermometer and its unit");
    }
    return celsius;
  }
}
