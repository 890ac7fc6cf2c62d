package io.strapline.level.inventory;

/** Which way the content of a vessel moves. */
public enum FlowDirection {
  /** The content grows. */
  FILLING(1),
  /** The content shrinks. */
  DRAWING(-1),
  /** The content stands, as far as the measurement can tell. */
  STILL(0);

  private final int sign;

  FlowDirection(int sign) {
    this.sign = sign;
  }

  /** Returns 1 for filling, -1 for drawing, 0 for still. */
  public int sign() {
    return sign;
  }

  /** Returns the direction of a change: filling if positive, drawing if negative, else still. */
  public static FlowDirection of(double change) {
    if (change > 0) {
      return FILLING;
    }
    return change < 0 ? DRAWING : STILL;
  }
}
