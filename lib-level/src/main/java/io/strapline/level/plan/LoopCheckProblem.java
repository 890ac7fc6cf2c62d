package io.strapline.level.plan;

/**
 * What a loop check found by arithmetic alone. Immutable.
 *
 * @param kind what is wrong
 * @param point name of the row where it shows, the worst one for a range that differs
 * @param text with value and fix
 */
public record LoopCheckProblem(Kind kind, String point, String text) {

  /** What is wrong. */
  public enum Kind {
    /** Transmitter and receiver carry different ranges. */
    RANGES_DIFFER,
    /** The level lies where the transmitter has no current for it. */
    NOT_SIGNALLED,
    /** The receiver takes this level from a current that no transmitter measures with. */
    NOT_SHOWN,
    /** The input card's register cannot hold the count. */
    NOT_COUNTED
  }
}
