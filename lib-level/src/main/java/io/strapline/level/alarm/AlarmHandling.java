package io.strapline.level.alarm;

import io.strapline.level.internal.Check;

/**
 * How an alarm is announced. Immutable.
 *
 * @param priority 1 (highest) to 4
 * @param latching whether the alarm stays until it is reset
 */
public record AlarmHandling(int priority, boolean latching) {

  /** Priority 2, not latching. */
  public static final AlarmHandling DEFAULT = new AlarmHandling(2, false);

  /** Checks the priority. */
  public AlarmHandling {
    priority =
        Check.between(
            "AlarmHandling.priority",
            priority,
            "",
            1,
            4,
            "enter 1 for the highest, 4 for the lowest");
  }
}
