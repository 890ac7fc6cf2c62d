package io.strapline.level.alarm;

/**
 * State of an alarm on the ISA-18.2 model (labels after public descriptions; the standard itself
 * was not read).
 */
public enum AlarmState {
  /** Not active, acknowledged. */
  NORMAL("NORM"),
  /** Active, not acknowledged. */
  UNACKNOWLEDGED("UNACK"),
  /** Active, acknowledged. */
  ACKNOWLEDGED("ACKED"),
  /** No longer active, not acknowledged. */
  RETURNED_UNACKNOWLEDGED("RTNUN"),
  /** Condition gone, held by latching, not acknowledged. */
  LATCHED_UNACKNOWLEDGED("LATUN"),
  /** Condition gone, held by latching, acknowledged; waits for reset. */
  LATCHED_ACKNOWLEDGED("LATACK");

  private final String shortName;

  AlarmState(String shortName) {
    this.shortName = shortName;
  }

  /** Returns the short name that the trade uses. */
  public String shortName() {
    return shortName;
  }

  /** Returns whether the alarm counts as active: the condition stands or is held by latching. */
  public boolean isActive() {
    return this != NORMAL && this != RETURNED_UNACKNOWLEDGED;
  }

  /** Returns whether the last occurrence is acknowledged. */
  public boolean isAcknowledged() {
    return this == NORMAL || this == ACKNOWLEDGED || this == LATCHED_ACKNOWLEDGED;
  }
}
