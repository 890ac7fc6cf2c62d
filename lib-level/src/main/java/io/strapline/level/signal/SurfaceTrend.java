package io.strapline.level.signal;

import io.strapline.level.internal.Elapsed;
import io.strapline.level.reading.Reading;
import java.time.Duration;
import java.time.Instant;

/**
 * Speed of the surface over a stretch of time: the slope of the straight line of least squares.
 * Stateful, one thread at a time. Samples that come faster than a thirtieth of the stretch are left
 * out, so that the memory is bounded and quick samples weigh no more than slow ones.
 */
final class SurfaceTrend {

  private static final int SLOTS = 32;
  private static final int PER_STRETCH = 30;

  private final Duration stretch;
  private final Duration spacing;
  private final double[] values = new double[SLOTS];
  private final Instant[] times = new Instant[SLOTS];
  private int count;
  private int newest = -1;

  SurfaceTrend(double stretchSeconds) {
    stretch = Elapsed.delay(stretchSeconds);
    spacing = Elapsed.delay(stretchSeconds / PER_STRETCH);
  }

  void add(Reading reading) {
    if (count > 0 && reading.time().isBefore(times[newest])) {
      // Set back: what came before says nothing of how fast the surface moves now.
      count = 0;
    }
    if (count > 0 && !isSpaced(reading.time())) {
      return;
    }
    newest = (newest + 1) % SLOTS;
    values[newest] = reading.value();
    times[newest] = reading.time();
    count = Math.min(count + 1, SLOTS);
  }

  private boolean isSpaced(Instant time) {
    return time.isAfter(times[newest]) && Elapsed.reached(times[newest], time, spacing);
  }

  /** Returns the speed in m/s, greater than zero when it goes away; zero with fewer than three. */
  double metresPerSecond() {
    int used = used();
    if (used < 3) {
      return 0;
    }
    double meanTime = 0;
    double meanValue = 0;
    for (int back = 0; back < used; back++) {
      meanTime += seconds(back) / used;
      meanValue += value(back) / used;
    }
    double above = 0;
    double below = 0;
    for (int back = 0; back < used; back++) {
      double time = seconds(back) - meanTime;
      above += time * (value(back) - meanValue);
      below += time * time;
    }
    double slope = above / below;
    return Double.isFinite(slope) ? slope : 0;
  }

  private int used() {
    int used = 0;
    while (used < count && -seconds(used) <= stretch.toNanos() / 1e9) {
      used++;
    }
    return used;
  }

  private double value(int back) {
    return values[Math.floorMod(newest - back, SLOTS)];
  }

  private double seconds(int back) {
    return Elapsed.seconds(times[newest], times[Math.floorMod(newest - back, SLOTS)]);
  }

  void reset() {
    count = 0;
  }
}
