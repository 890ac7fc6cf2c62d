package io.strapline.level.plan;

import io.strapline.level.internal.Check;

/**
 * What a step between two set points has on top of its response time. Immutable.
 *
 * @param factor on the response time, finite, at least 1
 * @param leastSeconds time that is used if the response is shorter, finite, zero or more
 * @param leastMetres height of the step at least, finite, zero or more
 * @param allowanceMetres by how much the surface may lie beyond the reading: error of measurement,
 *     waves, tilt; finite, zero or more; taken off after the volume
 */
public record Margin(
    double factor, double leastSeconds, double leastMetres, double allowanceMetres) {

  /** Nothing on top. */
  public static final Margin NONE = new Margin(1, 0, 0, 0);

  /** Checks all numbers. */
  public Margin {
    if (!(Double.isFinite(factor) && factor >= 1)) {
      throw Check.error(
          "Margin.factor", factor, "", "must be finite and at least 1", "enter 1 for no margin");
    }
    leastSeconds =
        Check.notNegative("Margin.leastSeconds", leastSeconds, "s", "enter 0 for no least time");
    leastMetres =
        Check.notNegative("Margin.leastMetres", leastMetres, "m", "enter 0 for no least height");
    allowanceMetres =
        Check.notNegative(
            "Margin.allowance", allowanceMetres, "m", "enter the error of measurement and waves");
  }

  /** Returns an allowance for the error of measurement alone. */
  public static Margin allowance(double metres) {
    return new Margin(1, 0, 0, metres);
  }
}
