package io.strapline.level.diagnosis;

import io.strapline.level.internal.Elapsed;
import java.time.Instant;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Scatter of a signal from the differences of successive samples, robust against outliers and
 * against a ramp: {@code 1.4826 med|d - med d| / sqrt 2} over the last 31 differences. 1.4826 makes
 * the median absolute deviation a standard deviation for normal noise (1 / 0.6745, the upper
 * quartile of the normal distribution); the difference of two samples scatters by the square root
 * of 2 more than one. Stateful, one thread at a time.
 */
final class NoiseEstimate {

  static final int DIFFERENCES = 31;
  private static final double TO_SIGMA = 1.4826 / Math.sqrt(2);

  private final double[] differences = new double[DIFFERENCES];
  private final double[] sorted = new double[DIFFERENCES];
  private int count;
  private int next;
  private double last;
  private @Nullable Instant latest;

  /** Takes a sample; one that is not later than the one before it is no new one. */
  void add(double value, Instant time) {
    if (latest != null && Elapsed.seconds(latest, time) > 0) {
      differences[next] = value - last;
      next = (next + 1) % DIFFERENCES;
      count = Math.min(count + 1, DIFFERENCES);
    }
    last = value;
    latest = time;
  }

  /** Starts a new stretch: the next sample has no one before it. */
  void interrupt() {
    latest = null;
  }

  boolean isFull() {
    return count == DIFFERENCES;
  }

  /** Returns the standard deviation; meaningful when full. */
  double sigma() {
    System.arraycopy(differences, 0, sorted, 0, DIFFERENCES);
    double middle = median();
    for (int i = 0; i < DIFFERENCES; i++) {
      sorted[i] = Math.abs(differences[i] - middle);
    }
    return TO_SIGMA * median();
  }

  private double median() {
    Arrays.sort(sorted);
    return sorted[DIFFERENCES / 2];
  }
}
