package io.strapline.level.units;

import io.strapline.level.internal.Check;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads and writes quantities with their unit, strictly: a wrong unit or a comma taken for a point
 * is a wrong number that looks right. Stateless.
 */
public final class Quantities {

  private static final int MOST_DECIMALS = 15;

  private static final Pattern NUMBER = Pattern.compile("[+-]?\\d+(?:\\.\\d+)?(?:[eE][+-]?\\d+)?");

  private static final Pattern NON_ZERO_MANTISSA = Pattern.compile("[+-]?[0.]*[1-9].*");

  private Quantities() {}

  /**
   * Reads a quantity such as {@code 6 m}, {@code 1.35 t/m3}, {@code 7 ft 4 1/2 in} or {@code 18'
   * 6"}. The number has a decimal point or none, digits on both sides of it, no separators between
   * groups of digits, and may have an exponent ({@code 1.5e-3}). A blank between number and unit is
   * free. Inches after feet are less than 12; fractions of an inch are less than one, in halves to
   * 128ths; a minus sign holds for feet and inches together.
   *
   * @param text number and unit; nothing is guessed
   * @param dimension what the quantity must be
   * @return the value in the SI unit of the dimension (see {@link Dimension}), finite
   * @throws IllegalArgumentException telling what is not understood and which units are
   */
  public static double parse(String text, Dimension dimension) {
    Check.text("quantity", text, UnitCatalog.needed(dimension));
    String tidy = tidy(text);
    refuseComma(tidy, dimension);
    Optional<Double> tape = FeetInches.parse(tidy);
    if (tape.isPresent()) {
      requireDimension(tidy, Dimension.LENGTH, dimension);
      return finite(tape.get(), tidy);
    }
    Matcher number = NUMBER.matcher(tidy);
    if (!number.lookingAt()) {
      throw refuse(tidy, "does not start with a number such as 0.5; " + needed(dimension));
    }
    return withUnit(tidy, number.end(), dimension);
  }

  private static double withUnit(String text, int numberEnd, Dimension dimension) {
    String symbol = text.substring(numberEnd).strip();
    if (symbol.isEmpty()) {
      throw refuse(text, "has no unit; " + needed(dimension));
    }
    double value = number(text.substring(0, numberEnd), text);
    return finite(lookUp(text, symbol, dimension).toSi(value), text);
  }

  /**
   * Reads a unit alone, as in the header of a table.
   *
   * @param text the symbol, such as {@code m3} or {@code US gal}
   * @param dimension what the unit must measure
   * @throws IllegalArgumentException telling what is not understood and which units are
   */
  public static Unit unit(String text, Dimension dimension) {
    Check.text("unit", text, UnitCatalog.needed(dimension));
    String symbol = tidy(text);
    return lookUp(symbol, symbol, dimension);
  }

  /** Returns all units of a dimension, the library's own first. */
  public static List<Unit> units(Dimension dimension) {
    return UnitCatalog.of(dimension);
  }

  /**
   * Writes a quantity with a fixed number of decimals, a decimal point and the unit's proper
   * symbol, such as {@code 6.00 m}; halves are rounded away from zero. {@link #parse} reads it
   * back.
   *
   * @param si the value in the SI unit of the dimension, finite
   * @param unit to write it in
   * @param decimals 0 to 15
   * @throws IllegalArgumentException if {@code si} is not finite or {@code decimals} is outside
   */
  public static String format(double si, Unit unit, int decimals) {
    Check.finite("Quantities.si", si, "", "show the quality instead of a value");
    Check.between("Quantities.decimals", decimals, "", 0, MOST_DECIMALS, "give fewer decimals");
    double value = Check.finite("Quantities.value", unit.fromSi(si), "", "use a larger unit");
    // BigDecimal has no negative zero: -0.001 at two decimals is 0.00.
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
    return rounded.toPlainString() + " " + unit.symbol();
  }

  /**
   * Writes a length as on a dip tape, such as {@code 7 ft 4 1/2 in}: rounded to the nearest
   * fraction of an inch, the fraction reduced, carried into inches and feet. {@link #parse} reads
   * it back.
   *
   * @param metres between -1e9 and 1e9
   * @param denominator the finest fraction of an inch: 1, 2, 4, 8, 16, 32, 64 or 128
   * @throws IllegalArgumentException if an argument is outside
   */
  public static String formatFeetInches(double metres, int denominator) {
    return FeetInches.format(metres, denominator);
  }

  /** Makes blanks plain and single, and takes the look-alikes of minus, prime and double prime. */
  private static String tidy(String text) {
    return text.replaceAll("[\\s\\u00A0\\u2009\\u202F]+", " ")
        .strip()
        .replace('\u2212', '-')
        .replaceAll("[\\u2032\\u2019]", "'")
        .replaceAll("[\\u2033\\u201D]", "\"")
        .replace('\u03BC', '\u00B5')
        .replace('\u2126', '\u03A9');
  }

  private static void refuseComma(String text, Dimension dimension) {
    if (text.indexOf(',') >= 0) {
      throw refuse(
          text,
          "has a comma, which may be a decimal or a thousands separator; write a decimal point and"
              + " no separators; "
              + needed(dimension));
    }
  }

  private static double number(String digits, String text) {
    double value = Double.parseDouble(digits);
    boolean vanished = value == 0 && NON_ZERO_MANTISSA.matcher(mantissa(digits)).matches();
    if (vanished || !Double.isFinite(value)) {
      throw refuse(text, "is too large or too small for a double; check the exponent");
    }
    return value + 0.0;
  }

  private static String mantissa(String digits) {
    return digits.split("[eE]", -1)[0];
  }

  private static Unit lookUp(String text, String symbol, Dimension dimension) {
    Unit unit =
        UnitCatalog.find(symbol)
            .orElseThrow(() -> refuse(text, ": " + UnitCatalog.whyUnknown(symbol, dimension)));
    requireDimension(text, unit.dimension(), dimension);
    return unit;
  }

  private static void requireDimension(String text, Dimension is, Dimension needed) {
    if (is != needed) {
      throw refuse(text, "is " + is.phrase() + "; " + needed(needed));
    }
  }

  private static double finite(double si, String text) {
    if (!Double.isFinite(si)) {
      throw refuse(text, "is too large for a double; check the exponent");
    }
    return si + 0.0;
  }

  private static String needed(Dimension dimension) {
    return UnitCatalog.needed(dimension);
  }

  private static IllegalArgumentException refuse(String text, String reason) {
    String gap = reason.startsWith(":") ? "" : " ";
    return new IllegalArgumentException("\"" + text + "\"" + gap + reason);
  }
}
