package io.strapline.level.loop;

import io.strapline.level.internal.Check;
import java.math.BigDecimal;
import java.math.MathContext;

/**
 * The span of the output that is calibrated, such as 4 to 20 mA. Immutable. Errors are told in
 * percent of this span and not of the reading (common practice, no source).
 *
 * @param lower output at the lower range value, finite
 * @param upper output at the upper range value, finite, other than {@code lower}; below it for a
 *     falling output
 * @param unit of both and of all readings, such as mA or m; not blank
 */
public record CalibrationSpan(double lower, double upper, String unit) {

  /** 4 to 20 mA. */
  public static final CalibrationSpan MILLIAMPS =
      new CalibrationSpan(LoopRange.LIVE_ZERO_MILLIAMPS, LoopRange.FULL_SCALE_MILLIAMPS, "mA");

  private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

  /** Checks that the ends are finite and differ. */
  public CalibrationSpan {
    unit = Check.text("CalibrationSpan.unit", unit, "give the unit of the readings").strip();
    lower = Check.finite("CalibrationSpan.lower", lower, unit, "enter the output at 0 %");
    upper = Check.finite("CalibrationSpan.upper", upper, unit, "enter the output at 100 %");
    if (lower == upper) {
      throw Check.error(
          "CalibrationSpan.upper",
          upper,
          unit,
          "must differ from lower (" + lower + ")",
          "enter the output at 100 %");
    }
  }

  /** Returns the size of the span, greater than zero. */
  public double size() {
    return Math.abs(upper - lower);
  }

  /** Returns where a value lies in the span: 0 at the lower, 100 at the upper end. */
  public double percent(double value) {
    return 100 * (value - lower) / (upper - lower);
  }

  /**
   * Returns {@code (reading - ideal) / span * 100}, in decimal: both count as the decimal numbers
   * they were written as, so that 4.02 mA is 0.125 % above 4 mA and not a hair less.
   */
  BigDecimal errorPercent(double reading, double ideal) {
    BigDecimal span = BigDecimal.valueOf(upper).subtract(BigDecimal.valueOf(lower)).abs();
    return BigDecimal.valueOf(reading)
        .subtract(BigDecimal.valueOf(ideal))
        .multiply(HUNDRED)
        .divide(span, MathContext.DECIMAL128);
  }
}
