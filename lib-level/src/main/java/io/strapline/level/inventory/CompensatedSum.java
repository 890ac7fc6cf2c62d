package io.strapline.level.inventory;

import io.strapline.level.internal.Check;

/**
 * A running sum that keeps what a plain sum loses: the rounding of every addition is summed apart
 * and added at the end (A. Neumaier, Rundungsfehleranalyse einiger Verfahren zur Summation
 * endlicher Summen, ZAMM 54 (1974), 39-51). Small amounts therefore count on a total of any size.
 * Immutable.
 *
 * @param sum the plain sum, finite
 * @param rest what rounding has taken from it, finite
 */
public record CompensatedSum(double sum, double rest) {

  /** The sum of nothing. */
  public static final CompensatedSum ZERO = new CompensatedSum(0, 0);

  /** Refuses parts that are not finite. */
  public CompensatedSum {
    sum = Check.finite("CompensatedSum.sum", sum, "", "restore a sum that was saved");
    rest = Check.finite("CompensatedSum.rest", rest, "", "restore a rest that was saved");
  }

  /**
   * Returns this sum with one more summand.
   *
   * @throws IllegalArgumentException if {@code summand} is not finite or the sum overflows
   */
  public CompensatedSum plus(double summand) {
    double next = sum + summand;
    double lost = Math.abs(sum) >= Math.abs(summand) ? sum - next + summand : summand - next + sum;
    return new CompensatedSum(next, rest + lost);
  }

  /** Returns the sum as a number. */
  public double value() {
    return sum + rest;
  }
}
