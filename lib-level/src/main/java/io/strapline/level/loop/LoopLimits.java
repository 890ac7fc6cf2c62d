package io.strapline.level.loop;

/**
 * Limits and times by which a loop current is judged. Immutable. Band limits: open PLC engineering
 * course, module 14, section 3.1, quoting NAMUR NE 43 (the recommendation itself was not read).
 * Recovery hysteresis and time: this project's choice.
 *
 * @param failureLow mA, at or below: failure low
 * @param underRange mA, from here up to 4 mA: under-range
 * @param overRange mA, above 20 mA up to here: over-range
 * @param failureHigh mA, at or above: failure high
 * @param confirmationSeconds how long a failure current must stand before it is a fault, zero or
 *     more
 * @param recovery when a fault ends
 */
public record LoopLimits(
    double failureLow,
    double underRange,
    double overRange,
    double failureHigh,
    double confirmationSeconds,
    Recovery recovery) {

  /**
   * When a confirmed fault ends.
   *
   * @param hysteresisMilliamps the current must be inside the failure limits by this much, zero or
   *     more
   * @param seconds for this long, zero or more
   */
  public record Recovery(double hysteresisMilliamps, double seconds) {}

  /** 3.6, 3.8, 20.5 and 21.0 mA, confirmation 4 s, recovery 0.1 mA and 2 s. */
  public static final LoopLimits NE43 =
      new LoopLimits(3.6, 3.8, 20.5, 21.0, 4, new Recovery(0.1, 2));

  /** Returns the band of a current in mA; {@link LoopBand#UNDEFINED} when it is not finite. */
  public LoopBand classify(double currentMilliamps) {
    throw new UnsupportedOperationException("later in this commit series");
  }
}
