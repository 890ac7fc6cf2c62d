package io.strapline.level.alarm;

/** What an alarm watches. */
public enum AlarmKind {
  /** Level at or above the highest limit. */
  HIGH_HIGH,
  /** Level at or above the high limit. */
  HIGH,
  /** Level at or below the low limit. */
  LOW,
  /** Level at or below the lowest limit. */
  LOW_LOW,
  /** The signal is BAD or substituted: no limit can be judged. */
  BAD_SIGNAL;

  /** Returns whether the alarm is set by a rising value. */
  public boolean isHigh() {
    return this == HIGH_HIGH || this == HIGH;
  }
}
