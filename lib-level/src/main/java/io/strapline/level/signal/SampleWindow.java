package io.strapline.level.signal;

import java.util.Arrays;

/** The last N values, filled with the first one. Stateful, one thread at a time. */
final class SampleWindow {

  private final double[] values;
  private int next;
  private boolean seeded;

  SampleWindow(int samples) {
    values = new double[samples];
  }

  void add(double value) {
    if (!seeded) {
      Arrays.fill(values, value);
      seeded = true;
    }
    values[next] = value;
    next = (next + 1) % values.length;
  }

  void copyTo(double[] target) {
    System.arraycopy(values, 0, target, 0, values.length);
  }

  /** Returns the mean, finite for finite values of any size. */
  double mean() {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return Double.isFinite(sum) ? sum / values.length : scaledMean();
  }

  // Loses a digit, so it serves only where the plain sum would overflow.
  private double scaledMean() {
    double mean = 0;
    for (double value : values) {
      mean += value / values.length;
    }
    return Math.max(-Double.MAX_VALUE, Math.min(Double.MAX_VALUE, mean));
  }

  /** Returns half the time between the oldest and the newest value. */
  double delaySeconds(double sampleIntervalSeconds) {
    return (values.length - 1) / 2.0 * Delays.checkedInterval(sampleIntervalSeconds);
  }

  void clear() {
    seeded = false;
  }
}
