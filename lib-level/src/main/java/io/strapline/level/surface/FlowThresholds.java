package io.strapline.level.surface;

import io.strapline.level.internal.Check;

/**
 * From which flow on a vessel counts as being filled or drawn, with hysteresis so that a flow near
 * the limit does not make the correction jump. Immutable.
 *
 * @param startCubicMetresPerSecond flow in either direction at or above which a movement begins;
 *     greater than zero
 * @param stopCubicMetresPerSecond flow below which it ends; in [0, start)
 */
public record FlowThresholds(double startCubicMetresPerSecond, double stopCubicMetresPerSecond) {

  /** Checks both numbers. */
  public FlowThresholds {
    Check.positive(
        "FlowThresholds.start",
        startCubicMetresPerSecond,
        "m3/s",
        "give a flow well above the noise of the flow signal");
    stopCubicMetresPerSecond =
        Check.notNegative(
            "FlowThresholds.stop", stopCubicMetresPerSecond, "m3/s", "give a flow below the start");
    if (!(stopCubicMetresPerSecond < startCubicMetresPerSecond)) {
      throw Check.error(
          "FlowThresholds.stop",
          stopCubicMetresPerSecond,
          "m3/s",
          "must be less than start (" + startCubicMetresPerSecond + " m3/s)",
          "half the start is common practice");
    }
  }

  /** Returns what the solids do at a flow, positive into the vessel, after what they did before. */
  public MaterialFlow next(MaterialFlow before, double cubicMetresPerSecond) {
    MaterialFlow towards = cubicMetresPerSecond > 0 ? MaterialFlow.FILLING : MaterialFlow.DRAWING;
    double size = Math.abs(cubicMetresPerSecond);
    if (size >= startCubicMetresPerSecond) {
      return towards;
    }
    return before == towards && size >= stopCubicMetresPerSecond ? before : MaterialFlow.STILL;
  }
}
