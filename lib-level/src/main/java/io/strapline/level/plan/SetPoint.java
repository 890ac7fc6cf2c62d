package io.strapline.level.plan;

/**
 * The levels of concern of a vessel, top to bottom. Order of the upper ones: trade article "Tank
 * Overfill Levels of Concern and Recommended Actions" describing API RP 2350; the lower ones mirror
 * them (common practice, no source).
 */
public enum SetPoint {
  /** Level at which harm begins: overflow, damage to the roof or to the transmitter. */
  CRITICAL_HIGH("critical high"),
  /** Level at which an independent device stops the filling. */
  AUTOMATIC_SHUT_OFF("automatic shut-off"),
  /** Level at which somebody must act at once. */
  HIGH_HIGH("high-high"),
  /** Highest level of normal work. */
  MAXIMUM_WORKING("maximum working"),
  /** Lowest level of normal work. */
  MINIMUM_WORKING("minimum working"),
  /** Level at which the drawing must be stopped at once. */
  LOW_LOW("low-low"),
  /** Level at which harm begins: air to the pump, bare heating coils, empty outlet. */
  CRITICAL_LOW("critical low");

  private final String label;

  SetPoint(String label) {
    this.label = label;
  }

  /** Returns whether the level guards against overfilling. */
  public boolean isHigh() {
    return compareTo(MAXIMUM_WORKING) <= 0;
  }

  /** Returns whether the level is given and not derived. */
  public boolean isCritical() {
    return this == CRITICAL_HIGH || this == CRITICAL_LOW;
  }

  /** Returns the name in words, such as "high-high" or "maximum working". */
  public String label() {
    return label;
  }
}
