package io.strapline.level.plan;

import io.strapline.level.internal.Check;

/**
 * The step from one set point to the next one towards the critical level. Immutable.
 *
 * @param time from the passing of the lower (for low set points: upper) one until the flow stops
 * @param margin what is put on top
 */
public record ResponseStep(ResponseTime time, Margin margin) {

  /** Checks that both are there. */
  public ResponseStep {
    Check.present("ResponseStep.time", time, "give the response time");
    Check.present("ResponseStep.margin", margin, "give Margin.NONE for none");
  }

  /** Returns a step of this response time in seconds with nothing on top. */
  public static ResponseStep ofSeconds(double seconds) {
    return new ResponseStep(ResponseTime.of(0, seconds), Margin.NONE);
  }

  /** Returns the time for which the greatest flow must find room, in seconds. */
  public double requiredSeconds() {
    return Math.max(time.totalSeconds() * margin.factor(), margin.leastSeconds());
  }
}
