package io.strapline.level.uncertainty;

import io.strapline.level.internal.Check;

/**
 * The sources of a 4-20 mA loop, stated as data sheets state them and turned into metres of
 * distance. All are rectangular and of type B. Stateless.
 */
public final class LoopSources {

  private static final double MOST_COUNTS = 1L << 32;

  private LoopSources() {}

  /**
   * Returns the maximum error of a current output, or of a current input, in percent of span.
   *
   * @param percentOfSpan zero to 100
   * @param spanMetres distance between the values at 4 and at 20 mA, greater than zero
   */
  public static UncertaintySource current(String name, double percentOfSpan, double spanMetres) {
    Check.between(
        "LoopSources.percentOfSpan", percentOfSpan, "%", 0, 100, "give the data sheet's figure");
    span(spanMetres);
    return UncertaintySource.rectangular(
        name, Influence.DISTANCE, percentOfSpan / 100 * spanMetres);
  }

  /**
   * Returns the resolution of an analogue-to-digital converter: half a count either way (GUM
   * F.2.2.1).
   *
   * @param countsOfSpan counts between 4 and 20 mA, in [1, 2^32]
   * @param spanMetres distance between the values at 4 and at 20 mA, greater than zero
   */
  public static UncertaintySource converter(String name, double countsOfSpan, double spanMetres) {
    Check.between(
        "LoopSources.countsOfSpan", countsOfSpan, "counts", 1, MOST_COUNTS, "see the card's sheet");
    span(spanMetres);
    return UncertaintySource.rectangular(name, Influence.DISTANCE, spanMetres / countsOfSpan / 2);
  }

  private static void span(double metres) {
    Check.positive("LoopSources.span", metres, "m", "give the distance from 4 to 20 mA");
  }
}
