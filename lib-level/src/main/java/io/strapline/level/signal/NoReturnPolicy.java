package io.strapline.level.signal;

import io.strapline.level.internal.Check;

/**
 * What a measuring point gives while the transmitter sees no surface. Immutable.
 *
 * @param action hold, substitute or fail
 * @param holdSeconds how long the last good value is held, finite, zero or more, counted by source
 *     time from the first sample without a measurement; when so many seconds have gone by, the hold
 *     is over; used by HOLD and SUBSTITUTE (before the substitute takes over)
 * @param substituteMetres the distance along the beam that stands in, finite, zero or more, marked
 *     uncertain; used by SUBSTITUTE only
 */
public record NoReturnPolicy(Action action, double holdSeconds, double substituteMetres) {

  /** What to do without a return. */
  public enum Action {
    /** Hold the last good value as uncertain, then BAD. */
    HOLD,
    /** Hold, then give the substitute value, uncertain and NE 107 failure. */
    SUBSTITUTE,
    /** BAD at once. */
    FAIL
  }

  /**
   * Checks both numbers.
   *
   * @throws IllegalArgumentException naming the setting that breaks its rule
   */
  public NoReturnPolicy {
    Check.present("NoReturnPolicy.action", action, "give HOLD, SUBSTITUTE or FAIL");
    holdSeconds =
        Check.notNegative(
            "NoReturnPolicy.hold", holdSeconds, "s", "enter a few sample intervals, or 0");
    substituteMetres =
        Check.notNegative(
            "NoReturnPolicy.substitute",
            substituteMetres,
            "m",
            "enter the distance along the beam that is to stand in");
  }

  /** Returns the policy: hold for so many seconds, then BAD. */
  public static NoReturnPolicy hold(double seconds) {
    return new NoReturnPolicy(Action.HOLD, seconds, 0);
  }

  /** Returns the policy: hold for so many seconds, then give this distance. */
  public static NoReturnPolicy substitute(double holdSeconds, double distanceMetres) {
    return new NoReturnPolicy(Action.SUBSTITUTE, holdSeconds, distanceMetres);
  }

  /** Returns the policy: BAD at once. */
  public static NoReturnPolicy fail() {
    return new NoReturnPolicy(Action.FAIL, 0, 0);
  }
}
