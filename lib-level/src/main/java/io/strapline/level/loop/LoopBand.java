package io.strapline.level.loop;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;

/** Band of a loop current after NAMUR NE 43, lowest first. */
public enum LoopBand {
  /** At or below the low failure limit: failure information or open loop. */
  FAILURE_LOW(Quality.Level.BAD, Cause.LOOP_FAULT_LOW),
  /** Between the low failure limit and the range: belongs to neither. */
  GAP_LOW(Quality.Level.UNCERTAIN, Cause.LOOP_GAP_LOW),
  /** Valid measurement below 4 mA. */
  UNDER_RANGE(Quality.Level.UNCERTAIN, Cause.LOOP_UNDER_RANGE),
  /** 4 to 20 mA. */
  NORMAL(Quality.Level.GOOD, Cause.NONE),
  /** Valid measurement above 20 mA. */
  OVER_RANGE(Quality.Level.UNCERTAIN, Cause.LOOP_OVER_RANGE),
  /** Between the range and the high failure limit: belongs to neither. */
  GAP_HIGH(Quality.Level.UNCERTAIN, Cause.LOOP_GAP_HIGH),
  /** At or above the high failure limit: failure information or short. */
  FAILURE_HIGH(Quality.Level.BAD, Cause.LOOP_FAULT_HIGH),
  /** The current is not a finite number. */
  UNDEFINED(Quality.Level.BAD, Cause.NOT_A_NUMBER);

  private final Quality.Level level;
  private final Cause cause;

  LoopBand(Quality.Level level, Cause cause) {
    this.level = level;
    this.cause = cause;
  }

  /** Returns the quality of a value measured in this band, before confirmation of a failure. */
  public Quality quality() {
    return new Quality(level, cause);
  }

  /** Returns whether the current carries no measurement. */
  public boolean isFailure() {
    return level == Quality.Level.BAD;
  }
}
