package io.strapline.level.diagnosis;

import io.strapline.level.internal.Elapsed;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A mean over a long time: the plain mean while it is being learned, then an exponential one with
 * the time constant. Weighted by time, so that quick and slow samples count alike; a gap counts as
 * no more than a hundredth of the time constant. Stateful, one thread at a time.
 */
final class SlowMean {

  private static final double MOST_PART = 0.01;

  private final double timeConstantSeconds;
  private double value;
  private double learnedSeconds;
  private @Nullable Instant latest;

  SlowMean(double timeConstantSeconds) {
    this.timeConstantSeconds = timeConstantSeconds;
  }

  void restore(double oldValue, double oldLearnedSeconds) {
    value = oldValue;
    learnedSeconds = oldLearnedSeconds;
  }

  void add(double sample, Instant time) {
    double elapsed = latest == null ? 0 : Math.max(0, Elapsed.seconds(latest, time));
    elapsed = Math.min(elapsed, MOST_PART * timeConstantSeconds);
    latest = time;
    double horizon = Math.min(learnedSeconds + elapsed, timeConstantSeconds);
    if (learnedSeconds == 0) {
      value = sample;
    } else {
      value += elapsed / horizon * (sample - value);
    }
    learnedSeconds += elapsed;
  }

  /** Lets time pass that is not learned from. */
  void skip(Instant time) {
    latest = time;
  }

  double value() {
    return value;
  }

  double learnedSeconds() {
    return learnedSeconds;
  }
}
