package io.strapline.level.signal;

import io.strapline.level.internal.Check;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;

/**
 * Mean of the last N samples. Stateful, one thread at a time. Random noise falls by the square root
 * of N; a step is reached in full after N samples.
 *
 * <p>The window is filled with the first usable sample. The output has the quality of the sample
 * that came with it. The sum is made anew for each sample: a running sum would keep the rounding
 * error of every value that ever passed.
 */
public final class MovingAverage implements SignalFilter {

  /** Longest window. */
  static final int MAX_SAMPLES = 1000;

  private final SampleWindow window;

  private MovingAverage(int samples) {
    window = new SampleWindow(samples);
  }

  /**
   * Returns an average that has seen nothing yet.
   *
   * @param samples 1 to 1000; 1 passes every sample unchanged
   */
  public static MovingAverage of(int samples) {
    return new MovingAverage(checkedSamples("MovingAverage.samples", samples));
  }

  static int checkedSamples(String field, int samples) {
    return Check.between(
        field, samples, "", 1, MAX_SAMPLES, "enter a number of samples, 1 for no average");
  }

  @Override
  public Reading apply(Reading input) {
    if (input.quality().isBad()) {
      return input;
    }
    window.add(input.value());
    return input.derived(window.mean(), Quality.GOOD);
  }

  /**
   * {@inheritDoc}
   *
   * <p>(N-1)/2 sample intervals: the group delay of a moving average (dsp.stackexchange.com,
   * question 42872).
   */
  @Override
  public double delaySeconds(double sampleIntervalSeconds) {
    return window.delaySeconds(sampleIntervalSeconds);
  }

  @Override
  public void reset() {
    window.clear();
  }
}
