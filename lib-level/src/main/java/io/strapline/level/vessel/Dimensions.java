package io.strapline.level.vessel;

import io.strapline.level.internal.Check;
import java.math.BigDecimal;
import java.math.RoundingMode;

/** Checks and writes the dimensions of vessels. Stateless. */
final class Dimensions {

  /** Below this a dimension is a slip, and powers of it would lose digits. */
  private static final double SMALLEST_METRES = 1e-6;

  /** Above this a dimension is in another unit: no vessel is ten kilometres wide. */
  private static final double GREATEST_METRES = 1e4;

  private Dimensions() {}

  /** Returns a dimension that must be there. */
  static double inside(String field, double metres) {
    return Check.between(
        field,
        metres,
        "m",
        SMALLEST_METRES,
        GREATEST_METRES,
        "give the inside dimension in metres");
  }

  /** Returns a dimension that may be zero, as of an outlet that comes to a point. */
  static double insideOrZero(String field, double metres) {
    return metres == 0 ? 0.0 : inside(field, metres);
  }

  /** Returns an angle greater than 0 and less than 90 degrees. */
  static double acute(String field, double degrees, String fix) {
    if (!(degrees > 0 && degrees < 90)) {
      throw Check.error(field, degrees, "deg", "must be greater than 0 and less than 90", fix);
    }
    return degrees;
  }

  /** Returns a height or volume clamped to [0, {@code high}]; NaN is refused. */
  static double clamp(String field, double value, String unit, double high) {
    if (Double.isNaN(value)) {
      throw Check.error(field, value, unit, "must be a number", "do not pass on a bad reading");
    }
    return Math.min(Math.max(value, 0.0), high);
  }

  /** Writes metres to the millimetre, small ones to the micrometre, without idle zeros. */
  static String text(double metres) {
    int decimals = metres < 0.001 ? 6 : 3;
    BigDecimal rounded = BigDecimal.valueOf(metres).setScale(decimals, RoundingMode.HALF_UP);
    return rounded.signum() == 0 ? "0 m" : rounded.stripTrailingZeros().toPlainString() + " m";
  }

  /** Writes a ratio to four decimals without idle zeros. */
  static String ratio(double ratio) {
    BigDecimal rounded = BigDecimal.valueOf(ratio).setScale(4, RoundingMode.HALF_UP);
    return rounded.stripTrailingZeros().toPlainString();
  }
}
