package io.strapline.level.plan;

import io.strapline.level.internal.Check;

/**
 * From the passing of a set point until the flow has stopped. Immutable. Times in seconds, finite,
 * zero or more. There are no defaults: the site states and proves its own times.
 *
 * @param operatorSeconds until somebody has noticed, decided and acted; zero for an automatic step
 * @param shutOffSeconds until the action has stopped the flow: valve travel, pump stop, run-out of
 *     a conveyor, pipe drain
 * @param detection until the alarm comes at all
 */
public record ResponseTime(
    double operatorSeconds, double shutOffSeconds, DetectionDelay detection) {

  /** Checks all times. */
  public ResponseTime {
    operatorSeconds =
        Check.notNegative(
            "ResponseTime.operator",
            operatorSeconds,
            "s",
            "enter the proven time, 0 for an automatic step");
    shutOffSeconds =
        Check.notNegative(
            "ResponseTime.shutOff", shutOffSeconds, "s", "enter the time until the flow stops");
    Check.present("ResponseTime.detection", detection, "give DetectionDelay.NONE for none");
  }

  /** Returns a response of people and plant whose detection delay is already in the times. */
  public static ResponseTime of(double operatorSeconds, double shutOffSeconds) {
    return new ResponseTime(operatorSeconds, shutOffSeconds, DetectionDelay.NONE);
  }

  /** Returns the sum of all parts in seconds. */
  public double totalSeconds() {
    return operatorSeconds + shutOffSeconds + detection.totalSeconds();
  }
}
