package io.strapline.level.signal;

import io.strapline.level.reading.Reading;

/**
 * One smoothing stage of one measuring point, fed with readings in time order. Stateful, one thread
 * at a time. The output's quality is never better than the input's; a BAD reading passes unchanged
 * and leaves the state as it is; the first usable reading after {@link #reset()} is the starting
 * value.
 */
public interface SignalFilter {

  /** Takes the next reading and returns the stage's output at the same time. */
  Reading apply(Reading input);

  /**
   * Returns the delay that the stage adds to a slow ramp, in seconds, zero or more.
   *
   * @param sampleIntervalSeconds time between samples, greater than zero
   */
  double delaySeconds(double sampleIntervalSeconds);

  /** Forgets everything; the next usable reading starts the stage anew. */
  void reset();
}
