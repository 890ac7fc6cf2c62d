package io.strapline.level.uncertainty;

import io.strapline.level.internal.Check;
import java.util.List;

/**
 * A standard uncertainty and how well it is known. Immutable.
 *
 * @param value zero or more, in the unit of its quantity
 * @param degreesOfFreedom greater than zero; infinite when the uncertainty is taken as exactly
 *     known (GUM G.4.3)
 */
public record StandardUncertainty(double value, double degreesOfFreedom) {

  /** Checks the numbers. */
  public StandardUncertainty {
    value = Check.notNegative("StandardUncertainty.value", value, "", "give its size");
    if (!(degreesOfFreedom > 0)) {
      throw Check.error(
          "StandardUncertainty.degreesOfFreedom",
          degreesOfFreedom,
          "",
          "must be greater than zero",
          "give the number of readings less one, or infinity where it is exactly known");
    }
  }

  /** Returns an uncertainty that is taken as exactly known. */
  public static StandardUncertainty exact(double value) {
    return new StandardUncertainty(value, Double.POSITIVE_INFINITY);
  }

  /**
   * Returns the experimental standard deviation of readings (GUM 4.2.2), with one degree of freedom
   * less than there are readings.
   *
   * @param readings at least two, finite
   */
  public static StandardUncertainty ofReadings(List<Double> readings) {
    Check.present("StandardUncertainty.readings", readings, "pass the readings");
    Check.between(
        "StandardUncertainty.readings",
        readings.size(),
        "readings",
        2,
        Integer.MAX_VALUE,
        "one reading shows no spread; take more");
    double sum = 0;
    for (double reading : readings) {
      sum += Check.finite("StandardUncertainty.reading", reading, "", "leave out bad readings");
    }
    double mean = sum / readings.size();
    double squares = 0;
    for (double reading : readings) {
      squares += (reading - mean) * (reading - mean);
    }
    int freedom = readings.size() - 1;
    return new StandardUncertainty(Math.sqrt(squares / freedom), freedom);
  }
}
