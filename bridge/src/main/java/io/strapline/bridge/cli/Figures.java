package io.strapline.bridge.cli;

import java.math.BigDecimal;
import java.util.Locale;

/** Writes numbers for people. Stateless. */
final class Figures {

  private Figures() {}

  /** Returns a number with a fixed number of decimals and never a negative zero. */
  static String of(double value, int decimals) {
    String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
    return text.matches("-0(\\.0*)?") ? text.substring(1) : text;
  }

  /** Returns a number as people write it: no decimals that say nothing. */
  static String plain(double value) {
    String text = BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    return text.equals("-0") ? "0" : text;
  }
}
