package io.strapline.level.signal;

/**
 * What a measuring point gives while the transmitter sees no surface. Immutable.
 *
 * @param action hold, substitute or fail
 * @param holdSeconds how long the last good value is held, zero or more, then BAD; used by HOLD and
 *     SUBSTITUTE (before the substitute takes over)
 * @param substituteMetres the distance that stands in, marked uncertain; used by SUBSTITUTE only
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
