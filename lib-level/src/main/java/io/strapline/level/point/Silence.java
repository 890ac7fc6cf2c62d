package io.strapline.level.point;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import java.time.Duration;
import java.time.Instant;

/**
 * Tells how old the data are. Age counts from the source time or from the arrival, whichever gives
 * more: a source clock that runs ahead cannot hide a silence, and late data are not taken for
 * fresh. Immutable.
 */
record Silence(SourceAges limits, Instant sourceTime, Instant arrival, Cause reason) {

  double ageSeconds(Instant now) {
    Duration bySource = Duration.between(sourceTime, now);
    Duration byArrival = Duration.between(arrival, now);
    Duration age = bySource.compareTo(byArrival) > 0 ? bySource : byArrival;
    return Math.max(0, age.toNanos() / 1e9);
  }

  Quality quality(Instant now) {
    double age = ageSeconds(now);
    if (age > limits.badSeconds()) {
      return Quality.bad(reason);
    }
    return age > limits.lastUsableSeconds()
        ? Quality.uncertain(Cause.SOURCE_SILENT_HELD)
        : Quality.GOOD;
  }

  Silence because(Cause newReason) {
    return new Silence(limits, sourceTime, arrival, newReason);
  }

  /**
   * Returns the source time that would belong to {@code now}: the last one plus the time since it
   * arrived.
   */
  Instant onSourceClock(Instant now) {
    Duration since = Duration.between(arrival, now);
    return since.isNegative() ? sourceTime : sourceTime.plus(since);
  }
}
