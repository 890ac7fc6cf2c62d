package io.strapline.level.plan;

import io.strapline.level.internal.Check;

/**
 * The greatest flows that can occur, all lines together. Immutable.
 *
 * @param inCubicMetresPerSecond finite, zero or more; zero when nothing is derived from it
 * @param outCubicMetresPerSecond likewise
 */
public record GreatestFlows(double inCubicMetresPerSecond, double outCubicMetresPerSecond) {

  /** Checks both flows. */
  public GreatestFlows {
    inCubicMetresPerSecond = checked("in", inCubicMetresPerSecond, "m3/s");
    outCubicMetresPerSecond = checked("out", outCubicMetresPerSecond, "m3/s");
  }

  private static double checked(String name, double flow, String unit) {
    return Check.notNegative(
        "GreatestFlows." + name, flow, unit, "enter the greatest flow without a sign");
  }

  /**
   * Returns the flows of bulk material known by mass.
   *
   * @param inKilogramsPerSecond finite, zero or more
   * @param outKilogramsPerSecond finite, zero or more
   * @param leastKilogramsPerCubicMetre least bulk density that occurs (freshly filled, loose):
   *     gives the greatest volume; greater than zero
   */
  public static GreatestFlows ofMass(
      double inKilogramsPerSecond,
      double outKilogramsPerSecond,
      double leastKilogramsPerCubicMetre) {
    Check.positive(
        "GreatestFlows.density",
        leastKilogramsPerCubicMetre,
        "kg/m3",
        "enter the least bulk density that occurs");
    return new GreatestFlows(
        checked("in", inKilogramsPerSecond, "kg/s") / leastKilogramsPerCubicMetre,
        checked("out", outKilogramsPerSecond, "kg/s") / leastKilogramsPerCubicMetre);
  }

  double towards(boolean high) {
    return high ? inCubicMetresPerSecond : outCubicMetresPerSecond;
  }

  GreatestFlows times(double share) {
    return new GreatestFlows(inCubicMetresPerSecond * share, outCubicMetresPerSecond * share);
  }
}
