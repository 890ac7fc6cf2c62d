package io.strapline.level.inventory;

import io.strapline.level.internal.Check;

/**
 * A liquid's volume from the capacity table to standard conditions and mass. Immutable.
 *
 * <p>{@code gross observed = (table - free water) x CTSh - roof}; {@code gross standard = gross
 * observed x CTL x CPL}; {@code mass = gross standard x density at the base} (chain after API MPMS
 * 12.1.1 as an inspection training handbook quotes it; the places of free water and roof are from
 * memory).
 *
 * @param grossObservedCubicMetres volume of the liquid as it lies
 * @param ctl factor for its temperature
 * @param cpl factor for its pressure
 * @param density its density at the base
 */
public record LiquidStock(
    double grossObservedCubicMetres, double ctl, double cpl, StandardDensity density) {

  /**
   * What stands in the tank by its capacity table. Immutable.
   *
   * @param tableCubicMetres volume by the table at the measured level, finite, zero or more
   * @param freeWaterCubicMetres water below the liquid, in [0, {@code tableCubicMetres}]
   * @param shellFactor CTSh of {@link ShellCorrection}, 1 without one; in [0.98, 1.02]
   * @param roofCubicMetres what a floating roof displaces, zero or more; zero without one
   */
  public record Observed(
      double tableCubicMetres,
      double freeWaterCubicMetres,
      double shellFactor,
      double roofCubicMetres) {

    /** Refuses volumes and factors that cannot be. */
    public Observed {
      Check.notNegative("LiquidStock.table", tableCubicMetres, "m3", "give the table's volume");
      Check.between(
          "LiquidStock.freeWater",
          freeWaterCubicMetres,
          "m3",
          0,
          tableCubicMetres,
          "give the water at the bottom, zero if none");
      Check.between(
          "LiquidStock.shellFactor",
          shellFactor,
          "",
          0.98,
          1.02,
          "give CTSh, 1 without a correction");
      Check.notNegative("LiquidStock.roof", roofCubicMetres, "m3", "give zero without a roof");
    }

    /** Returns a tank without water, roof or shell correction. */
    public static Observed plain(double tableCubicMetres) {
      return new Observed(tableCubicMetres, 0, 1, 0);
    }

    /** Returns the volume of the liquid as it lies, in cubic metres; never below zero. */
    public double grossObservedCubicMetres() {
      double liquid = (tableCubicMetres - freeWaterCubicMetres) * shellFactor;
      return Math.max(0, liquid - roofCubicMetres);
    }
  }

  /** Refuses volumes and factors that cannot be. */
  public LiquidStock {
    Check.notNegative("LiquidStock.grossObserved", grossObservedCubicMetres, "m3", "give a volume");
    Check.between("LiquidStock.ctl", ctl, "", 0.5, 1.5, "give CTL, a factor near 1");
    Check.between("LiquidStock.cpl", cpl, "", 0.5, 1.5, "give CPL, a factor near 1");
    Check.present("LiquidStock.density", density, "give the density at the base");
  }

  /**
   * Returns the stock of a liquid at its temperature and pressure.
   *
   * @param celsius temperature of the liquid, in the correction's range
   * @param gaugePascals pressure on the liquid, zero for an open tank
   * @throws IllegalArgumentException if temperature or pressure are outside the correction's range
   */
  public static LiquidStock of(
      Observed observed, LiquidCorrection correction, double celsius, double gaugePascals) {
    return new LiquidStock(
        observed.grossObservedCubicMetres(),
        correction.ctl(celsius),
        correction.cpl(celsius, gaugePascals),
        correction.density());
  }

  /** Returns the volume at the base temperature and atmospheric pressure, in cubic metres. */
  public double grossStandardCubicMetres() {
    return grossObservedCubicMetres * ctl * cpl;
  }

  /** Returns the mass, in kilograms. */
  public double kilograms() {
    return grossStandardCubicMetres() * density.kilogramsPerCubicMetre();
  }
}
