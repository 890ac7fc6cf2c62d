package io.strapline.level.diagnosis;

import io.strapline.level.internal.Check;

/**
 * How a baseline is learned. Immutable.
 *
 * @param leastSeconds nothing is judged before so much was learned; finite, greater than zero
 * @param timeConstantSeconds how slowly it follows afterwards; finite, at least {@code
 *     leastSeconds}; a slow fault that takes much longer than this is learned as usual
 */
public record Learning(double leastSeconds, double timeConstantSeconds) {

  private static final double DAY = 86_400;

  /** A day, then 90 days: common practice, no source. */
  public static final Learning USUAL = new Learning(DAY, 90 * DAY);

  /** Checks both times. */
  public Learning {
    Check.positive("Learning.least", leastSeconds, "s", "enter such as 86400 for a day");
    Check.positive(
        "Learning.timeConstant", timeConstantSeconds, "s", "enter such as 7776000 for 90 days");
    if (timeConstantSeconds < leastSeconds) {
      throw Check.error(
          "Learning.timeConstant",
          timeConstantSeconds,
          "s",
          "must not be less than the least time (" + leastSeconds + " s)",
          "enter a longer time constant");
    }
  }
}
