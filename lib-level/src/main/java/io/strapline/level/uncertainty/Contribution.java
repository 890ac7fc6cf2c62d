package io.strapline.level.uncertainty;

import io.strapline.level.internal.Check;

/**
 * One line of an uncertainty budget. Immutable.
 *
 * @param name of the source
 * @param type how its spread was found
 * @param distribution its shape
 * @param standard its standard uncertainty, in the source's own unit
 * @param sensitivity change of the result per unit of the source, finite, with sign
 */
public record Contribution(
    String name,
    EvaluationType type,
    Distribution distribution,
    StandardUncertainty standard,
    double sensitivity) {

  /** Checks the fields. */
  public Contribution {
    Check.text("Contribution.name", name, "name the source");
    sensitivity =
        Check.finite("Contribution.sensitivity", sensitivity, "", "give the slope of the model");
  }

  /** Returns the line of a source with its sensitivity. */
  static Contribution of(UncertaintySource source, double sensitivity) {
    return new Contribution(
        source.name(), source.type(), source.distribution(), source.standard(), sensitivity);
  }

  /** Returns the standard uncertainty that the source causes in the result, zero or more. */
  public double inResult() {
    return Math.abs(signed());
  }

  /** The uncertainty in the result with the sign of the sensitivity, for correlations. */
  double signed() {
    return sensitivity * standard.value();
  }

  /** The same line for a result that is so many times this one. */
  Contribution times(double factor) {
    return new Contribution(name, type, distribution, standard, sensitivity * factor);
  }
}
