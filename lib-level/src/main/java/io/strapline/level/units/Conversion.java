package io.strapline.level.units;

import io.strapline.level.internal.Check;

/**
 * The straight line from a unit to the unit the library computes in: (value + offset) x numerator /
 * denominator. Numerator and denominator are kept apart because both are then exact numbers where
 * their quotient is not, and a value is rounded once instead of twice. Immutable.
 *
 * @param offset added first, in the unit converted from; zero but for temperatures
 * @param numerator finite, greater than zero
 * @param denominator finite, greater than zero
 */
public record Conversion(double offset, double numerator, double denominator) {

  /** Checks the numbers. */
  public Conversion {
    offset = Check.finite("Conversion.offset", offset, "", "give the shift of the scale");
    Check.positive("Conversion.numerator", numerator, "", "give the factor's upper number");
    Check.positive("Conversion.denominator", denominator, "", "give the factor's lower number");
  }

  /** Returns the conversion of a unit the library itself computes in. */
  static Conversion si() {
    return new Conversion(0, 1, 1);
  }

  /** Returns the conversion by a factor. */
  static Conversion ratio(double numerator, double denominator) {
    return new Conversion(0, numerator, denominator);
  }

  /** Converts to the library's unit; NaN and infinities pass through. */
  double toSi(double value) {
    return (value + offset) * numerator / denominator;
  }

  /** Converts from the library's unit; NaN and infinities pass through. */
  double fromSi(double si) {
    return si * denominator / numerator - offset;
  }
}
