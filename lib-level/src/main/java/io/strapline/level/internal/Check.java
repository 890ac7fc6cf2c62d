package io.strapline.level.internal;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Argument checks whose message names the field, the value with its unit, the rule and the fix.
 * Stateless.
 *
 * <p>Message form: {@code Type.field = value unit: rule; fix}. Every check is written in the
 * positive form, so that NaN is refused too.
 */
public final class Check {

  private Check() {}

  /** Returns {@code value} if it is finite. */
  public static double finite(String field, double value, String unit, String fix) {
    if (!Double.isFinite(value)) {
      throw error(field, value, unit, "must be a finite number", fix);
    }
    return value + 0.0;
  }

  /** Returns {@code value} if it is finite and greater than zero. */
  public static double positive(String field, double value, String unit, String fix) {
    if (!(Double.isFinite(value) && value > 0)) {
      throw error(field, value, unit, "must be greater than zero", fix);
    }
    return value;
  }

  /** Returns {@code value} if it is finite and zero or greater. */
  public static double notNegative(String field, double value, String unit, String fix) {
    if (!(Double.isFinite(value) && value >= 0)) {
      throw error(field, value, unit, "must be zero or greater", fix);
    }
    return value + 0.0;
  }

  /** Returns {@code value} if it lies in [{@code low}, {@code high}], both ends included. */
  public static double between(
      String field, double value, String unit, double low, double high, String fix) {
    if (!(value >= low && value <= high)) {
      throw error(field, value, unit, "must lie between " + low + " and " + high, fix);
    }
    return value + 0.0;
  }

  /** Returns {@code value} if it lies in [{@code low}, {@code high}], both ends included. */
  public static int between(String field, int value, String unit, int low, int high, String fix) {
    if (value < low || value > high) {
      throw error(
          field, Integer.toString(value), unit, "must lie between " + low + " and " + high, fix);
    }
    return value;
  }

  /** Returns {@code value} if it is there. */
  public static <T> T present(String field, @Nullable T value, String fix) {
    if (value == null) {
      throw new IllegalArgumentException(field + " is missing: " + fix);
    }
    return value;
  }

  /** Returns {@code text} if it holds anything but white space. */
  public static String text(String field, @Nullable String text, String fix) {
    if (text == null || text.isBlank()) {
      throw new IllegalArgumentException(field + " is empty: " + fix);
    }
    return text;
  }

  /** Builds the exception for a number that breaks a rule. */
  public static IllegalArgumentException error(
      String field, double value, String unit, String rule, String fix) {
    return error(field, String.format(Locale.ROOT, "%s", value), unit, rule, fix);
  }

  /** Builds the exception for a value that breaks a rule. */
  public static IllegalArgumentException error(
      String field, String value, String unit, String rule, String fix) {
    String withUnit = unit.isEmpty() ? value : value + " " + unit;
    return new IllegalArgumentException(field + " = " + withUnit + ": " + rule + "; " + fix);
  }
}
