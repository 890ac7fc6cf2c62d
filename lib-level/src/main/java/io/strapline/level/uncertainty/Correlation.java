package io.strapline.level.uncertainty;

import io.strapline.level.internal.Check;

/**
 * Two sources that err together. Sources without a stated correlation count as independent.
 * Immutable.
 *
 * @param first name of a source
 * @param second name of another
 * @param coefficient in [-1, 1]; 1 when both always err alike, -1 when opposite
 */
public record Correlation(String first, String second, double coefficient) {

  /** Checks the fields. */
  public Correlation {
    Check.text("Correlation.first", first, "name a source of the budget");
    Check.text("Correlation.second", second, "name a source of the budget");
    coefficient =
        Check.between(
            "Correlation.coefficient", coefficient, "", -1, 1, "give 0 for independent sources");
    if (first.equals(second)) {
      throw Check.error(
          "Correlation.second", second, "", "is the first source too", "name another source");
    }
  }

  boolean names(String one, String other) {
    return (first.equals(one) && second.equals(other))
        || (first.equals(other) && second.equals(one));
  }
}
