package io.strapline.level.uncertainty;

import io.strapline.level.internal.Check;
import java.util.List;

/**
 * One source of uncertainty: an error whose size is not known, but its spread. Immutable.
 *
 * @param name for the budget and for correlations, each once
 * @param influence what it acts on
 * @param type how the spread was found
 * @param distribution its shape
 * @param standard its standard uncertainty, in the influence's unit, zero or more, with the degrees
 *     of freedom
 */
public record UncertaintySource(
    String name,
    Influence influence,
    EvaluationType type,
    Distribution distribution,
    StandardUncertainty standard) {

  private static final String NAME_IT = "name the source, such as transmitter";

  /** Checks the fields. */
  public UncertaintySource {
    Check.text("UncertaintySource.name", name, NAME_IT);
    Check.present("UncertaintySource.influence", influence, "say what the error acts on");
    Check.present("UncertaintySource.type", type, "say how the spread was found: A or B");
    Check.present("UncertaintySource.distribution", distribution, "say its shape");
    Check.present("UncertaintySource.standard", standard, "give the standard uncertainty");
  }

  /**
   * Returns a source whose error lies between two limits, all values alike (GUM 4.3.7), such as the
   * "maximum error" of a data sheet.
   *
   * @param halfWidth half the distance between the limits, zero or more
   */
  public static UncertaintySource rectangular(String name, Influence influence, double halfWidth) {
    return limited(name, influence, Distribution.RECTANGULAR, halfWidth);
  }

  /**
   * Returns a source whose error lies between two limits, by type B.
   *
   * @param distribution RECTANGULAR, TRIANGULAR or U_SHAPED
   * @param halfWidth half the distance between the limits, zero or more
   * @throws IllegalArgumentException if the distribution is NORMAL, which has no limits
   */
  public static UncertaintySource limited(
      String name, Influence influence, Distribution distribution, double halfWidth) {
    if (distribution == Distribution.NORMAL) {
      throw Check.error(
          "UncertaintySource.distribution",
          "NORMAL",
          "",
          "has no limits",
          "give the expanded uncertainty and its coverage factor instead");
    }
    Check.notNegative(
        "UncertaintySource.halfWidth", halfWidth, influence.unit(), "give half the width");
    StandardUncertainty standard = StandardUncertainty.exact(halfWidth / distribution.divisor());
    return new UncertaintySource(name, influence, EvaluationType.B, distribution, standard);
  }

  /**
   * Returns a source with a stated expanded uncertainty, as on a certificate (GUM 4.3.3).
   *
   * @param expanded in the influence's unit, zero or more
   * @param coverageFactor by which it was expanded, in (0, 10]; 1 for a standard uncertainty
   */
  public static UncertaintySource certified(
      String name, Influence influence, double expanded, double coverageFactor) {
    Check.notNegative(
        "UncertaintySource.expanded", expanded, influence.unit(), "give the stated uncertainty");
    Check.between(
        "UncertaintySource.coverageFactor",
        coverageFactor,
        "",
        Double.MIN_NORMAL,
        10,
        "give the factor stated beside the uncertainty, usually 2");
    StandardUncertainty standard = StandardUncertainty.exact(expanded / coverageFactor);
    return new UncertaintySource(name, influence, EvaluationType.B, Distribution.NORMAL, standard);
  }

  /**
   * Returns the noise measured on the live signal while the surface stands still, by type A: the
   * experimental standard deviation (GUM 4.2.2), divided by the root of the number of readings that
   * the used value is the mean of (GUM 4.2.3).
   *
   * <p>Readings must be independent: a filtered signal repeats itself from reading to reading and
   * looks calmer than it is. Take readings before the filter, or further apart than its delay.
   *
   * @param readings at least two, finite, in the influence's unit
   * @param averaged how many independent readings one used value is the mean of, 1 or more
   */
  public static UncertaintySource measured(
      String name, Influence influence, List<Double> readings, int averaged) {
    Check.between(
        "UncertaintySource.averaged", averaged, "", 1, Integer.MAX_VALUE, "give 1 without a mean");
    StandardUncertainty single = StandardUncertainty.ofReadings(readings);
    StandardUncertainty mean =
        new StandardUncertainty(single.value() / Math.sqrt(averaged), single.degreesOfFreedom());
    return new UncertaintySource(name, influence, EvaluationType.A, Distribution.NORMAL, mean);
  }
}
