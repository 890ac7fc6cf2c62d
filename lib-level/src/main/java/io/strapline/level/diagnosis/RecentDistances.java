package io.strapline.level.diagnosis;

import io.strapline.level.internal.Elapsed;
import java.time.Duration;
import java.time.Instant;

/**
 * The distances of a stretch of time, for the movement from its beginning to its end. Samples that
 * come faster than a sixteenth of the stretch are left out. Stateful, one thread at a time.
 */
final class RecentDistances {

  private static final int SLOTS = 18;
  private static final int PER_STRETCH = 16;

  private final Duration stretch;
  private final Duration spacing;
  private final double[] values = new double[SLOTS];
  private final Instant[] times = new Instant[SLOTS];
  private int count;
  private int newest = -1;

  RecentDistances(double stretchSeconds) {
    stretch = Elapsed.delay(stretchSeconds);
    spacing = Elapsed.delay(stretchSeconds / PER_STRETCH);
  }

  /** Keeps a sample, unless it follows the one before it too soon. */
  void add(double metres, Instant time) {
    if (count > 0 && time.isBefore(times[newest])) {
      count = 0;
    }
    if (count > 0 && !isSpaced(time)) {
      return;
    }
    newest = (newest + 1) % SLOTS;
    values[newest] = metres;
    times[newest] = time;
    count = Math.min(count + 1, SLOTS);
  }

  private boolean isSpaced(Instant time) {
    return time.isAfter(times[newest]) && Elapsed.reached(times[newest], time, spacing);
  }

  /**
   * A movement.
   *
   * @param metres greater than zero when the surface went away
   * @param seconds how long it took; zero when nothing is known
   */
  record Movement(double metres, double seconds) {}

  /**
   * Returns the movement to a sample from the oldest one of the stretch before it; where samples
   * are rarer than the stretch, from the last one.
   */
  Movement to(double metres, Instant time) {
    int oldest = -1;
    for (int back = 0; back < count; back++) {
      int at = Math.floorMod(newest - back, SLOTS);
      boolean inside = Duration.between(times[at], time).compareTo(stretch) <= 0;
      if (back > 0 && !inside) {
        break;
      }
      oldest = at;
    }
    if (oldest < 0) {
      return new Movement(0, 0);
    }
    return new Movement(metres - values[oldest], Math.max(0, Elapsed.seconds(times[oldest], time)));
  }
}
