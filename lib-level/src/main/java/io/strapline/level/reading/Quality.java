package io.strapline.level.reading;

import io.strapline.level.internal.Check;

/**
 * How far a value may be trusted, and why. Immutable.
 *
 * @param level good, uncertain or bad
 * @param cause {@link Cause#NONE} exactly when {@code level} is {@link Level#GOOD}
 */
public record Quality(Level level, Cause cause) {

  /** Trust in a value, best first. */
  public enum Level {
    /** The value may be used for control. */
    GOOD,
    /** The value may be shown; it is held, clamped, substituted or less exact than stated. */
    UNCERTAIN,
    /** The value must not be used. */
    BAD
  }

  /** The quality of a valid measurement. */
  public static final Quality GOOD = new Quality(Level.GOOD, Cause.NONE);

  /** Checks that a cause is given exactly when the level is not good. */
  public Quality {
    Check.present("Quality.level", level, "give GOOD, UNCERTAIN or BAD");
    Check.present("Quality.cause", cause, "give a cause, NONE for GOOD");
    if ((level == Level.GOOD) != (cause == Cause.NONE)) {
      throw Check.error(
          "Quality.cause",
          cause.name(),
          "",
          "GOOD has cause NONE and every other level has a cause",
          "give the cause that belongs to " + level);
    }
  }

  /** Returns an uncertain quality with this cause, which must not be {@link Cause#NONE}. */
  public static Quality uncertain(Cause cause) {
    return new Quality(Level.UNCERTAIN, cause);
  }

  /** Returns a bad quality with this cause, which must not be {@link Cause#NONE}. */
  public static Quality bad(Cause cause) {
    return new Quality(Level.BAD, cause);
  }

  /** Returns the worse of the two; on a tie the first, so that the earlier stage's cause stays. */
  public static Quality worst(Quality a, Quality b) {
    return b.level.compareTo(a.level) > 0 ? b : a;
  }

  /** Returns whether the value must not be used. */
  public boolean isBad() {
    return level == Level.BAD;
  }

  /** Returns whether the value is a valid measurement. */
  public boolean isGood() {
    return level == Level.GOOD;
  }
}
