package io.strapline.level.signal;

import io.strapline.level.internal.Check;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import java.util.Arrays;

/**
 * Median of the last N samples, N odd. Stateful, one thread at a time. Takes out up to (N-1)/2
 * outliers in a row and does not smear a clean edge.
 *
 * <p>The window is filled with the first usable sample. The output has the quality of the sample
 * that came with it.
 */
public final class Median implements SignalFilter {

  /** Longest window. */
  static final int MAX_SAMPLES = 99;

  private final SampleWindow window;
  private final double[] sorted;

  private Median(int samples) {
    window = new SampleWindow(samples);
    sorted = new double[samples];
  }

  /**
   * Returns a median that has seen nothing yet.
   *
   * @param samples odd, 1 to 99; 1 passes every sample unchanged
   */
  public static Median of(int samples) {
    return new Median(checkedSamples("Median.samples", samples));
  }

  static int checkedSamples(String field, int samples) {
    Check.between(field, samples, "", 1, MAX_SAMPLES, "enter an odd number, 1 for no median");
    if (samples % 2 == 0) {
      throw Check.error(
          field,
          Integer.toString(samples),
          "",
          "must be odd, so that one sample stands in the middle",
          "enter " + (samples - 1) + " or " + (samples + 1));
    }
    return samples;
  }

  @Override
  public Reading apply(Reading input) {
    if (input.quality().isBad()) {
      return input;
    }
    window.add(input.value());
    return input.derived(middle(), Quality.GOOD);
  }

  private double middle() {
    window.copyTo(sorted);
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }

  /**
   * {@inheritDoc}
   *
   * <p>(N-1)/2 sample intervals: on a rising or falling ramp the sample in the middle of the order
   * is the one in the middle of the window (derived here).
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
