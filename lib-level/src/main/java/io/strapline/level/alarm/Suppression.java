package io.strapline.level.alarm;

/**
 * Why an alarm is not announced. It stands beside the {@link AlarmState} and not in its place: a
 * suppressed alarm is evaluated all the same. Short names: ISA-18.2 labels from memory.
 */
public enum Suppression {
  /** It is announced. */
  NONE(""),
  /** Put aside by an operator, for a limited time. */
  SHELVED("SHLVD"),
  /** Suppressed by the plant's own logic, because it means nothing in the present state. */
  SUPPRESSED_BY_DESIGN("DSUPR"),
  /** Taken out of service for maintenance. */
  OUT_OF_SERVICE("OOSRV");

  private final String shortName;

  Suppression(String shortName) {
    this.shortName = shortName;
  }

  /** Returns the short name that the trade uses, empty for {@link #NONE}. */
  public String shortName() {
    return shortName;
  }
}
