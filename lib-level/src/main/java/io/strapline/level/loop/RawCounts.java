package io.strapline.level.loop;

import io.strapline.level.internal.Check;

/**
 * How an input card's raw value becomes a loop current: a straight line through the counts at 4 mA
 * and at 20 mA, never clamped. Immutable.
 *
 * <p>{@code I = 4 + 16 (raw - countAt4) / (countAt20 - countAt4)}, the straight line of {@link
 * LoopRange}. A raw value that its encoding cannot hold gives NaN, so that it is judged as a
 * failure ({@link LoopBand#UNDEFINED}) instead of being clamped to a believable current.
 *
 * @param encoding how the value is carried
 * @param countAt4 value at 4 mA: any finite number, for a 16-bit encoding one that it can hold
 * @param countAt20 value at 20 mA: likewise, other than {@code countAt4}; below it for a card that
 *     counts down
 */
public record RawCounts(Encoding encoding, double countAt4, double countAt20) {

  /** How a 16-bit register carries the count. */
  public enum Encoding {
    /**
     * Two's complement, -32768 to 32767: the safe choice, since a small negative current stays
     * small. A source that hands the register as 0 to 65535 is understood too: 65535 is -1.
     */
    SIGNED_16(Short.MIN_VALUE, Short.MAX_VALUE),
    /** 0 to 65535; a negative count wraps to a large one on the card itself. */
    UNSIGNED_16(0, 0xFFFF),
    /** Any number, as it is (a converted value, a volt reading). */
    NUMBER(-Double.MAX_VALUE, Double.MAX_VALUE);

    private final double least;
    private final double greatest;

    Encoding(double least, double greatest) {
      this.least = least;
      this.greatest = greatest;
    }

    /** Returns the number that the raw value stands for; NaN when it stands for none. */
    double number(double raw) {
      if (this == NUMBER) {
        return raw;
      }
      boolean fits = raw >= least && raw <= 0xFFFF && raw == Math.rint(raw);
      if (!fits) {
        return Double.NaN;
      }
      return raw > greatest ? raw - 0x10000 : raw;
    }
  }

  private static final double MICROAMPS_PER_MILLIAMP = 1000;
  private static final double MILLIVOLTS_PER_VOLT = 1000;

  /** Checks that both counts can occur and that they differ. */
  public RawCounts {
    Check.present("RawCounts.encoding", encoding, "give SIGNED_16, UNSIGNED_16 or NUMBER");
    countAt4 = requireCount("RawCounts.countAt4", countAt4, encoding);
    countAt20 = requireCount("RawCounts.countAt20", countAt20, encoding);
    if (countAt4 == countAt20) {
      throw Check.error(
          "RawCounts.countAt20",
          countAt20,
          "",
          "must differ from countAt4 (" + countAt4 + ")",
          "enter the raw value at 20 mA");
    }
  }

  /** Returns the counts of a signed 16-bit register, such as 0 at 4 mA and 27648 at 20 mA. */
  public static RawCounts signed16(int countAt4, int countAt20) {
    return new RawCounts(Encoding.SIGNED_16, countAt4, countAt20);
  }

  /**
   * Returns the counts of an unsigned 16-bit register, such as 13107 at 4 mA and 65535 at 20 mA.
   */
  public static RawCounts unsigned16(int countAt4, int countAt20) {
    return new RawCounts(Encoding.UNSIGNED_16, countAt4, countAt20);
  }

  /** Returns a source that gives the current in microamps: 4000 at 4 mA, 20000 at 20 mA. */
  public static RawCounts ofMicroamps() {
    return new RawCounts(
        Encoding.NUMBER,
        LoopRange.LIVE_ZERO_MILLIAMPS * MICROAMPS_PER_MILLIAMP,
        LoopRange.FULL_SCALE_MILLIAMPS * MICROAMPS_PER_MILLIAMP);
  }

  /** Returns a source that gives the current in milliamps. */
  public static RawCounts ofMilliamps() {
    return new RawCounts(
        Encoding.NUMBER, LoopRange.LIVE_ZERO_MILLIAMPS, LoopRange.FULL_SCALE_MILLIAMPS);
  }

  /**
   * Returns a source that gives the volts across a resistor in the loop: 1 V and 5 V for 250 ohm.
   *
   * @param ohms resistance of the resistor (burden), greater than zero
   */
  public static RawCounts ofVoltsAcross(double ohms) {
    Check.positive(
        "RawCounts.ohms", ohms, "ohm", "enter the resistance of the burden, such as 250");
    return new RawCounts(
        Encoding.NUMBER,
        LoopRange.LIVE_ZERO_MILLIAMPS * ohms / MILLIVOLTS_PER_VOLT,
        LoopRange.FULL_SCALE_MILLIAMPS * ohms / MILLIVOLTS_PER_VOLT);
  }

  /**
   * Returns the loop current in mA for a raw value as read.
   *
   * @param raw any double; for a 16-bit encoding a whole number that fits in 16 bits: -32768 to
   *     65535 when signed, 0 to 65535 when unsigned
   * @return mA, not clamped; NaN when {@code raw} is not finite or does not fit the encoding
   */
  public double currentMilliamps(double raw) {
    double number = Double.isFinite(raw) ? encoding.number(raw) : Double.NaN;
    double part = (number - countAt4) / (countAt20 - countAt4);
    return LoopRange.LIVE_ZERO_MILLIAMPS + LoopRange.SPAN_MILLIAMPS * part;
  }

  private static double requireCount(String field, double count, Encoding encoding) {
    Check.finite(field, count, "", "enter the raw value of the card");
    return Check.between(
        field,
        count,
        "",
        encoding.least,
        encoding.greatest,
        "enter the raw value as " + encoding + " carries it, or choose the other encoding");
  }
}
