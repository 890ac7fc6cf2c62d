package io.strapline.level.table;

import io.strapline.level.internal.Check;

/**
 * What a calibration by liquid is judged by. Immutable.
 *
 * @param meter the meter
 * @param levelStandardMetres standard uncertainty of one level reading by itself, greater than zero
 * @param heelStandardCubicMetres standard uncertainty of the volume at the first reading
 * @param outlierFactor a reading is named when it lies off by more than so many standard
 *     uncertainties, in [2, 10]; 4 names one sound reading in some 16,000
 */
public record CalibrationFacts(
    MeterFacts meter,
    double levelStandardMetres,
    double heelStandardCubicMetres,
    double outlierFactor) {

  /** Checks the fields. */
  public CalibrationFacts {
    Check.present("CalibrationFacts.meter", meter, "give what is known of the meter");
    Check.positive(
        "CalibrationFacts.levelStandard", levelStandardMetres, "m", "no reading is exact");
    heelStandardCubicMetres =
        Check.notNegative(
            "CalibrationFacts.heelStandard", heelStandardCubicMetres, "m3", "0 if it was empty");
    Check.between(
        "CalibrationFacts.outlierFactor", outlierFactor, "", 2, 10, "4 is a usual choice");
  }
}
