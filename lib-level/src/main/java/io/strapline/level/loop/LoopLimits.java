package io.strapline.level.loop;

import io.strapline.level.internal.Check;

/**
 * Limits and times by which a loop current is judged. Immutable. Band limits: open PLC engineering
 * course, module 14, section 3.1, quoting NAMUR NE 43 (the recommendation itself was not read).
 * Recovery hysteresis and time: this project's choice.
 *
 * <p>The limits must rise: {@code failureLow < underRange <= 4 < 20 <= overRange < failureHigh}.
 * The hysteresis must leave the whole measuring range [{@code underRange}, {@code overRange}]
 * inside the recovery window, so that every valid measurement can end a fault.
 *
 * @param failureLow mA, at or below: failure low; zero or more
 * @param underRange mA, from here up to 4 mA: under-range; above {@code failureLow}, at most 4
 * @param overRange mA, above 20 mA up to here: over-range; at least 20
 * @param failureHigh mA, at or above: failure high; above {@code overRange}
 * @param confirmationSeconds how long a failure current must stand before it is a fault, zero or
 *     more; with zero the first failure current is a fault
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
   * @param seconds for this long, zero or more; with zero the first such current ends the fault
   */
  public record Recovery(double hysteresisMilliamps, double seconds) {

    /** Checks that both numbers are finite and zero or more. */
    public Recovery {
      hysteresisMilliamps =
          Check.notNegative(
              "LoopLimits.recovery.hysteresis",
              hysteresisMilliamps,
              "mA",
              "enter how far inside the failure limits the current must come, such as 0.1");
      seconds =
          Check.notNegative(
              "LoopLimits.recovery.seconds",
              seconds,
              "s",
              "enter how long the current must stay there, such as 2");
    }
  }

  /** 3.6, 3.8, 20.5 and 21.0 mA, confirmation 4 s, recovery 0.1 mA and 2 s. */
  public static final LoopLimits NE43 =
      new LoopLimits(3.6, 3.8, 20.5, 21.0, 4, new Recovery(0.1, 2));

  /** One picoamp: decimal limits such as 3.6 + 0.2 and 3.8 differ in their last binary digit. */
  private static final double ROUNDING_MILLIAMPS = 1e-9;

  /** Checks the order of the limits, the times and the recovery window. */
  public LoopLimits {
    failureLow =
        Check.notNegative(
            "LoopLimits.failureLow", failureLow, "mA", "enter the low failure limit, such as 3.6");
    failureHigh =
        Check.finite(
            "LoopLimits.failureHigh",
            failureHigh,
            "mA",
            "enter the high failure limit, such as 21");
    requireOrder(failureLow, underRange, overRange, failureHigh);
    confirmationSeconds =
        Check.notNegative(
            "LoopLimits.confirmation",
            confirmationSeconds,
            "s",
            "enter how long a failure current must stand, such as 4");
    Check.present("LoopLimits.recovery", recovery, "say when a fault ends");
    requireRoom(recovery, Math.min(underRange - failureLow, failureHigh - overRange));
  }

  /** Returns the band of a current in mA; {@link LoopBand#UNDEFINED} when it is not finite. */
  public LoopBand classify(double currentMilliamps) {
    if (!Double.isFinite(currentMilliamps)) {
      return LoopBand.UNDEFINED;
    }
    return currentMilliamps < LoopRange.LIVE_ZERO_MILLIAMPS
        ? classifyLow(currentMilliamps)
        : classifyHigh(currentMilliamps);
  }

  /** Returns whether a current in mA lies far enough inside the failure limits to end a fault. */
  boolean recovers(double currentMilliamps) {
    double hysteresis = recovery.hysteresisMilliamps - ROUNDING_MILLIAMPS;
    return !classify(currentMilliamps).isFailure()
        && currentMilliamps - failureLow >= hysteresis
        && failureHigh - currentMilliamps >= hysteresis;
  }

  private LoopBand classifyLow(double currentMilliamps) {
    if (currentMilliamps <= failureLow) {
      return LoopBand.FAILURE_LOW;
    }
    return currentMilliamps < underRange ? LoopBand.GAP_LOW : LoopBand.UNDER_RANGE;
  }

  private LoopBand classifyHigh(double currentMilliamps) {
    if (currentMilliamps <= LoopRange.FULL_SCALE_MILLIAMPS) {
      return LoopBand.NORMAL;
    }
    if (currentMilliamps >= failureHigh) {
      return LoopBand.FAILURE_HIGH;
    }
    return currentMilliamps <= overRange ? LoopBand.OVER_RANGE : LoopBand.GAP_HIGH;
  }

  private static void requireOrder(
      double failureLow, double underRange, double overRange, double failureHigh) {
    if (!(underRange > failureLow && underRange <= LoopRange.LIVE_ZERO_MILLIAMPS)) {
      throw Check.error(
          "LoopLimits.underRange",
          underRange,
          "mA",
          "must lie above failureLow (" + failureLow + " mA) and not above 4 mA",
          "enter the least current that is a measurement, such as 3.8");
    }
    if (!(overRange >= LoopRange.FULL_SCALE_MILLIAMPS && overRange < failureHigh)) {
      throw Check.error(
          "LoopLimits.overRange",
          overRange,
          "mA",
          "must not lie below 20 mA and must lie below failureHigh (" + failureHigh + " mA)",
          "enter the greatest current that is a measurement, such as 20.5");
    }
  }

  private static void requireRoom(Recovery recovery, double mostMilliamps) {
    if (recovery.hysteresisMilliamps > mostMilliamps + ROUNDING_MILLIAMPS) {
      throw Check.error(
          "LoopLimits.recovery.hysteresis",
          recovery.hysteresisMilliamps,
          "mA",
          "must not exceed the gaps beside the measuring range (" + mostMilliamps + " mA)",
          "enter less, or a valid measurement could never end a fault");
    }
  }
}
