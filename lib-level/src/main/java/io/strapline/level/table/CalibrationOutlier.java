package io.strapline.level.table;

import java.util.Locale;

/**
 * A reading that does not fit its neighbours. It is named, not dropped. Immutable.
 *
 * @param line of the reading
 * @param kind what is most likely wrong
 * @param sizeCubicMetres by how much, with sign: the level is read too low, or the increment is
 *     metered too large, where it is positive
 * @param timesStandard its size over its standard uncertainty
 */
public record CalibrationOutlier(
    int line, Kind kind, double sizeCubicMetres, double timesStandard) {

  /** What is most likely wrong. */
  public enum Kind {
    /** The level, since the readings after it fit again. */
    LEVEL_READING("the level does not fit its neighbours"),
    /** The metered increment that led to it, since all readings after it are off together. */
    METERED_INCREMENT("all readings from here on are off against those before");

    private final String phrase;

    Kind(String phrase) {
      this.phrase = phrase;
    }

    /** Returns it in words. */
    public String phrase() {
      return phrase;
    }
  }

  /** Returns the outlier in one sentence with what to do. */
  public String text() {
    return String.format(
        Locale.ROOT,
        "line %d: %s by %+.4g m3 (%.1f times the standard uncertainty); check the record; a joint"
            + " of the vessel or deadwood there may be the reason",
        line,
        kind.phrase(),
        sizeCubicMetres,
        Math.abs(timesStandard));
  }
}
