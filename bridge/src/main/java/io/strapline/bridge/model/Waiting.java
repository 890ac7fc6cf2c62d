package io.strapline.bridge.model;

import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.TimeUnit;

/** Sleeps until a clock that runs by itself has reached a time. Stateless. */
final class Waiting {

  /** Bounds one sleep, so that a time of centuries hence overflows nothing. */
  private static final Duration LONGEST = Duration.ofHours(1);

  private Waiting() {}

  /** Returns when {@code clock}, which runs {@code speed} times real time, has reached the time. */
  static void until(Instant time, PlantClock clock, double speed) throws InterruptedException {
    Instant now = clock.instant();
    while (now.isBefore(time)) {
      TimeUnit.NANOSECONDS.sleep(realNanos(Duration.between(now, time), speed));
      now = clock.instant();
    }
  }

  private static long realNanos(Duration remaining, double speed) {
    if (remaining.compareTo(LONGEST) > 0) {
      return (long) (LONGEST.toNanos() / Math.max(1, speed));
    }
    // At least a microsecond: rounding down to nothing would spin.
    return Math.max(1_000, (long) (remaining.toNanos() / speed));
  }
}
