package io.strapline.level.table;

import io.strapline.level.internal.Check;

/**
 * What is known of the meter that filled a vessel for calibration. Immutable.
 *
 * <p>True volume in the vessel = indicated volume x factor x (1 + expansion x (vessel temperature -
 * meter temperature)): the same mass of liquid at another temperature, to first order (derived
 * here). The vessel's own expansion to its reference temperature is not in it.
 *
 * @param factor true volume over indicated volume, in [0.5, 2]
 * @param factorStandard relative standard uncertainty of the factor, the same for all increments,
 *     in [0, 1]
 * @param incrementStandardCubicMetres standard uncertainty of one increment by itself
 *     (repeatability), zero or more
 * @param expansionPerKelvin cubic expansion of the liquid, in [-0.01, 0.01] per K; about 0.0002 for
 *     water at 20 degC (from memory)
 * @param vesselMinusMeterKelvin how much warmer the liquid is in the vessel than in the meter, in
 *     [-100, 100] K
 */
public record MeterFacts(
    double factor,
    double factorStandard,
    double incrementStandardCubicMetres,
    double expansionPerKelvin,
    double vesselMinusMeterKelvin) {

  /** Checks the numbers. */
  public MeterFacts {
    Check.between("MeterFacts.factor", factor, "", 0.5, 2, "take it from the meter's certificate");
    factorStandard =
        Check.between("MeterFacts.factorStandard", factorStandard, "", 0, 1, "0.001 for 0.1 %");
    incrementStandardCubicMetres =
        Check.notNegative(
            "MeterFacts.incrementStandard", incrementStandardCubicMetres, "m3", "give its spread");
    expansionPerKelvin =
        Check.between(
            "MeterFacts.expansion", expansionPerKelvin, "per K", -0.01, 0.01, "0 to leave it out");
    vesselMinusMeterKelvin =
        Check.between(
            "MeterFacts.vesselMinusMeter", vesselMinusMeterKelvin, "K", -100, 100, "0 if equal");
  }

  /** Returns the true volume in the vessel of an indicated one. */
  public double trueCubicMetres(double indicatedCubicMetres) {
    return indicatedCubicMetres * factor * (1 + expansionPerKelvin * vesselMinusMeterKelvin);
  }
}
