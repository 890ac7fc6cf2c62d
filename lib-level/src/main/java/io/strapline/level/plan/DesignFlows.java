package io.strapline.level.plan;

import io.strapline.level.internal.Check;

/**
 * The greatest flows that can occur, all lines together. Immutable.
 *
 * @param inCubicMetresPerSecond finite, zero or more; zero when nothing is derived from it
 * @param outCubicMetresPerSecond likewise
 */
public record DesignFlows(double inCubicMetresPerSecond, double outCubicMetresPerSecond) {

  /** Checks both flows. */
  public DesignFlows {
    inCubicMetresPerSecond = checked("in", inCubicMetresPerSecond, "m3/s");
    outCubicMetresPerSecond = checked("out", outCubicMetresPerSecond, "m3/s");
  }

  private static double checked(String name, double flow, String unit) {
    return Check.notNegative(
        "DesignFlows." + name, flow, unit, "enter the greatest flow without a sign");
  }

  /**
   * Returns the flows of bulk material known by mass.
   *
   * @param inKilogramsPerSecond finite, zero or more
   * @param outKilogramsPerSecond finite, zero or more
   * @param leastKilogramsPerCubicMetre least bulk density that occurs (freshly filled, loose):
   *     gives the greatest volume; greater than zero
   */
  public static DesignFlows ofMass(
      double inKilogramsPerSecond,
      double outKilogramsPerSecond,
      double leastKilogramsPerCubicMetre) {
    Check.positive(
        "DesignFlows.density",
        leastKilogramsPerCubicMetre,
        "kg/m3",
        "enter the least bulk density that occurs");
    return new DesignFlows(
        checked("in", inKilogramsPerSecond, "kg/s") / leastKilogramsPerCubicMetre,
        checked("out", outKilogramsPerSecond, "kg/s") / leastKilogramsPerCubicMetre);
  }

  double towards(boolean high) {
    return high ? inCubicMetresPerSecond : outCubicMetresPerSecond;
  }

  DesignFlows times(double share) {
    return new DesignFlows(inCubicMetresPerSecond * share, outCubicMetresPerSecond * share);
  }
}
