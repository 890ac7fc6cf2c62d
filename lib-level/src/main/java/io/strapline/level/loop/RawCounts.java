package io.strapline.level.loop;

/**
 * How an input card's raw value becomes a loop current: a straight line through the counts at 4 mA
 * and at 20 mA, never clamped. Immutable.
 *
 * @param encoding how the value is carried
 * @param countAt4 value at 4 mA, any finite number
 * @param countAt20 value at 20 mA, any finite number other than {@code countAt4}
 */
public record RawCounts(Encoding encoding, double countAt4, double countAt20) {

  /** How a 16-bit register carries the count. */
  public enum Encoding {
    /**
     * Two's complement, -32768 to 32767: the safe choice, since a small negative current stays
     * small.
     */
    SIGNED_16,
    /** 0 to 65535; a negative count wraps to a large one on the card itself. */
    UNSIGNED_16,
    /** Any number, as it is (a converted value, a volt reading). */
    NUMBER
  }

  /**
   * Returns the loop current in mA for a raw value as read; NaN when the raw value is not finite.
   */
  public double currentMilliamps(double raw) {
    throw new UnsupportedOperationException("later in this commit series");
  }
}
