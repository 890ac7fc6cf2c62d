package io.strapline.level.table;

import java.math.BigDecimal;
import java.math.MathContext;

/** Sums as on paper, so that 3.2 - 1.2 is 2 in a table and in a message. Stateless. */
final class PaperSums {

  private static final MathContext DIGITS = new MathContext(15);

  private PaperSums() {}

  /** Adds two decimal numbers as they are written; infinities and NaN as doubles do. */
  static double sum(double a, double b) {
    return Double.isFinite(a) && Double.isFinite(b)
        ? BigDecimal.valueOf(a).add(BigDecimal.valueOf(b)).doubleValue()
        : a + b;
  }

  /** Drops what converting a unit leaves in the last digits: 9 mm are 0.9 cm. */
  static double tidy(double converted) {
    return Double.isFinite(converted)
        ? BigDecimal.valueOf(converted).round(DIGITS).doubleValue()
        : converted;
  }
}
