package io.strapline.level.inventory;

import io.strapline.level.internal.Check;
import io.strapline.level.units.VolumeUnit;

/**
 * How large a difference between book and measured stock may be: a share of the throughput plus a
 * constant. Immutable.
 *
 * @param shareOfThroughput fraction, not percent, in [0, 1]
 * @param constant in the stock's unit, finite, zero or more
 */
public record BalanceRule(double shareOfThroughput, double constant) {

  private static final double MONTHLY_SHARE = 0.01;
  private static final double MONTHLY_US_GALLONS = 130;

  /** Refuses shares and constants that cannot be. */
  public BalanceRule {
    shareOfThroughput =
        Check.between(
            "BalanceRule.share",
            shareOfThroughput,
            "",
            0,
            1,
            "give a fraction of the throughput, 0.01 for 1 %");
    constant = Check.notNegative("BalanceRule.constant", constant, "", "give an amount or zero");
  }

  /**
   * Returns the rule of inventory control for underground fuel tanks over a month: 1 % of the
   * flow-through plus 130 US gallons, in cubic metres (Washington Administrative Code 173-360A-0620
   * (1)(a)). Local codes prevail.
   */
  public static BalanceRule undergroundTankMonth() {
    return new BalanceRule(MONTHLY_SHARE, VolumeUnit.US_GALLON.toSi(MONTHLY_US_GALLONS));
  }

  /**
   * Returns the difference that is still allowed.
   *
   * @param throughput amount that went out over the period, finite, zero or more
   */
  public double threshold(double throughput) {
    return shareOfThroughput
            * Check.notNegative(
                "BalanceRule.throughput", throughput, "", "give what went out without a sign")
        + constant;
  }
}
