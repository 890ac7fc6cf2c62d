package io.strapline.level.units;

import io.strapline.level.internal.Check;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Feet, inches and fractions of an inch, as on a dip tape: {@code 7 ft 4 1/2 in}, {@code 18' 6"},
 * {@code -3 1/16 in}. Stateless. The sign belongs to the whole. Derived here: one inch is 0.0254 m
 * exactly, a foot twelve inches.
 */
final class FeetInches {

  private static final int LARGEST_DENOMINATOR = 128;

  private static final double FARTHEST_METRES = 1e9;

  private static final Pattern FORM =
      Pattern.compile(
          "(?<sign>[+-])? ?(?:(?<feet>\\d{1,9}(?:\\.\\d+)?) ?(?:ft|')(?:-| ?))?"
              + "(?:(?:(?<inches>\\d{1,9}(?:\\.\\d+)?)(?![\\d/]))?"
              + "(?:[ -]?(?<over>\\d{1,4})/(?<under>\\d{1,4}))? ?(?:in|\"))?");

  private FeetInches() {}

  /**
   * Reads a length in feet, inches or both.
   *
   * @param text with runs of white space made one blank
   * @return metres; empty if the text is of another form
   * @throws IllegalArgumentException if it has the form and breaks a rule
   */
  static Optional<Double> parse(String text) {
    Matcher form = FORM.matcher(text);
    if (!form.matches() || text.chars().noneMatch(Character::isDigit)) {
      return Optional.empty();
    }
    double inches = feet(form, text) * 12 + inches(form, text);
    double metres = LengthUnit.INCH.toSi(inches);
    return Optional.of("-".equals(form.group("sign")) ? -metres : metres);
  }

  private static double feet(Matcher form, String text) {
    String feet = form.group("feet");
    if (feet == null) {
      return 0;
    }
    boolean alone = form.group("inches") == null && form.group("over") == null;
    require(alone || !feet.contains("."), text, "has decimal feet beside inches; write whole feet");
    return Double.parseDouble(feet);
  }

  private static double inches(Matcher form, String text) {
    String inches = form.group("inches");
    double whole = inches == null ? 0 : Double.parseDouble(inches);
    boolean afterFeet = form.group("feet") != null;
    require(
        !afterFeet || whole < 12,
        text,
        "has 12 inches or more after feet; carry them into the feet");
    require(
        inches == null || form.group("over") == null || !inches.contains("."),
        text,
        "has decimal inches beside a fraction; write one of them");
    return whole + fraction(form, text);
  }

  private static double fraction(Matcher form, String text) {
    if (form.group("over") == null) {
      return 0;
    }
    int over = Integer.parseInt(form.group("over"));
    int under = Integer.parseInt(form.group("under"));
    require(
        isDenominator(under),
        text,
        "has a denominator other than 2, 4, 8, 16, 32, 64 or 128; use one");
    require(over < under, text, "has a fraction of one or more; carry it into the inches");
    return (double) over / under;
  }

  private static boolean isDenominator(int under) {
    return under >= 2 && under <= LARGEST_DENOMINATOR && Integer.bitCount(under) == 1;
  }

  private static void require(boolean rule, String text, String otherwise) {
    if (!rule) {
      throw new IllegalArgumentException("\"" + text + "\" " + otherwise);
    }
  }

  /** Writes metres as feet, whole inches and a reduced fraction; see {@link Quantities}. */
  static String format(double metres, int denominator) {
    Check.between(
        "FeetInches.metres",
        metres,
        "m",
        -FARTHEST_METRES,
        FARTHEST_METRES,
        "give a length in metres");
    if (denominator != 1 && !isDenominator(denominator)) {
      throw Check.error(
          "FeetInches.denominator",
          Integer.toString(denominator),
          "",
          "must be 1, 2, 4, 8, 16, 32, 64 or 128",
          "give the finest fraction of an inch to write");
    }
    long parts = Math.round(LengthUnit.INCH.fromSi(Math.abs(metres)) * denominator);
    String sign = metres < 0 && parts > 0 ? "-" : "";
    long inches = parts / denominator;
    long rest = parts % denominator;
    return sign + inches / 12 + " ft " + inches % 12 + fractionText(rest, denominator) + " in";
  }

  private static String fractionText(long over, int under) {
    if (over == 0) {
      return "";
    }
    long common = Long.lowestOneBit(over);
    return " " + over / common + "/" + under / common;
  }
}
