package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import io.strapline.level.units.Dimension;
import io.strapline.level.units.Quantities;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.regex.Pattern;

/**
 * The text of one value and its place; turns it into numbers, quantities and words. Where that
 * fails, a problem is noted and a placeholder returned: nothing is built from an unsound section.
 *
 * @param text as written, without quotes
 * @param place where
 * @param problems takes the problems
 */
record Scalar(String text, Place place, Problems problems) {

  private static final Pattern PLAIN_NUMBER =
      Pattern.compile("[-+]?(\\d+([.,]\\d*)?|[.,]\\d+)([eE][-+]?\\d+)?");

  /** No leading zeros: to some readers they mean octal. */
  private static final Pattern INTEGER = Pattern.compile("0|-?[1-9]\\d{0,8}");

  /** Reads a quantity with its unit; in the unit of {@link Dimension}, NaN after a problem. */
  double quantity(Dimension dimension) {
    if (PLAIN_NUMBER.matcher(text).matches()) {
      error(Reason.MALFORMED, "is a number without a unit", "write " + example(dimension));
      return Double.NaN;
    }
    return tryQuantity(dimension).orElse(Double.NaN);
  }

  private OptionalDouble tryQuantity(Dimension dimension) {
    try {
      return OptionalDouble.of(Quantities.parse(text, dimension));
    } catch (IllegalArgumentException unreadable) {
      LibraryError message = LibraryError.of(unreadable);
      error(Reason.MALFORMED, message.rule(), message.fix("write " + example(dimension)));
      return OptionalDouble.empty();
    }
  }

  /** Reads a whole number in [low, high]; {@code low} after a problem. */
  int integer(int low, int high) {
    OptionalInt number = parseInteger();
    if (number.isEmpty()) {
      error(
          Reason.MALFORMED, "is no whole number", "write digits only, from " + low + " to " + high);
      return low;
    }
    if (number.getAsInt() < low || number.getAsInt() > high) {
      error(
          Reason.OUT_OF_RANGE,
          "must lie between " + low + " and " + high,
          "write a whole number from " + low + " to " + high);
      return low;
    }
    return number.getAsInt();
  }

  private OptionalInt parseInteger() {
    return INTEGER.matcher(text).matches()
        ? OptionalInt.of(Integer.parseInt(text))
        : OptionalInt.empty();
  }

  /** Reads a finite number without a unit; NaN after a problem. */
  double number() {
    if (PLAIN_NUMBER.matcher(text).matches() && !text.contains(",")) {
      double number = Double.parseDouble(text);
      if (Double.isFinite(number)) {
        return number;
      }
    }
    error(Reason.MALFORMED, "is no number", "write digits with a decimal point and without a unit");
    return Double.NaN;
  }

  /** Reads {@code true} or {@code false}; false after a problem. */
  boolean flag() {
    if (!text.equals("true") && !text.equals("false")) {
      error(Reason.MALFORMED, "is neither true nor false", "write true or false");
    }
    return text.equals("true");
  }

  /** Reads one of the words for these constants; the first of them after a problem. */
  <E extends Enum<E>> E choice(List<E> among) {
    E fallback = among.get(0);
    return Labels.find(text, among)
        .orElseGet(
            () -> {
              String words = String.join(", ", Labels.of(among));
              error(Reason.MALFORMED, "is not one of " + words, "write one of these words");
              return fallback;
            });
  }

  /** Notes an error at this value. */
  void error(Reason reason, String rule, String fix) {
    problems.error(place, reason, rule, fix);
  }

  /** Returns what a quantity of this dimension looks like. */
  static String example(Dimension dimension) {
    return switch (dimension) {
      case LENGTH -> "a length such as 6 m";
      case VOLUME -> "a volume such as 40 m3";
      case MASS -> "a mass such as 12 t";
      case DENSITY -> "a density such as 1.35 t/m3";
      case TIME -> "a time such as 5 s";
      case SPEED -> "a speed such as 0.2 m/s";
      case VOLUME_FLOW -> "a volume flow such as 120 m3/h";
      case MASS_FLOW -> "a mass flow such as 80 t/h";
      case CURRENT -> "a current such as 12 mA";
      case VOLTAGE -> "a voltage such as 24 V";
      case RESISTANCE -> "a resistance such as 250 ohm";
      case TEMPERATURE -> "a temperature such as 20 degC";
      case ANGLE -> "an angle such as 4 deg";
      case RATIO -> "a part of the range such as 80 %";
    };
  }
}
