package io.strapline.level.loop;

import io.strapline.level.internal.Check;
import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * The greatest error that still passes, and how errors are rounded before they are compared.
 * Immutable. Rule: the error in percent of span is rounded to {@code decimals} places, half away
 * from zero; it passes when its size does not exceed the tolerance.
 *
 * @param percentOfSpan greater than zero
 * @param decimals places that errors are rounded to, 0 to 6; at least as many as the tolerance
 *     itself has, best one more, since rounding decides about what lies on the edge
 */
public record CalibrationTolerance(double percentOfSpan, int decimals) {

  /** Checks both. */
  public CalibrationTolerance {
    percentOfSpan =
        Check.positive(
            "CalibrationTolerance.percentOfSpan",
            percentOfSpan,
            "%",
            "enter the tolerance in percent of span");
    decimals =
        Check.between("CalibrationTolerance.decimals", decimals, "", 0, 6, "enter the places");
    int own = BigDecimal.valueOf(percentOfSpan).stripTrailingZeros().scale();
    if (decimals < own) {
      throw Check.error(
          "CalibrationTolerance.decimals",
          Integer.toString(decimals),
          "",
          "must not be fewer than the tolerance has (" + percentOfSpan + " %)",
          "enter " + own + " or more");
    }
  }

  /** Returns the tolerance in the unit of the span. */
  public double inUnitOf(CalibrationSpan span) {
    return percentOfSpan / 100 * span.size();
  }

  /** Returns an error rounded by the rule. */
  public BigDecimal rounded(BigDecimal errorPercent) {
    // HALF_UP works on the size, so it is half away from zero.
    return errorPercent.setScale(decimals, RoundingMode.HALF_UP);
  }

  /** Returns whether an error passes. */
  public boolean passes(BigDecimal errorPercent) {
    return rounded(errorPercent).abs().compareTo(BigDecimal.valueOf(percentOfSpan)) <= 0;
  }
}
