package io.strapline.level.inventory;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import java.time.Instant;

/** Readings at seconds after a fixed start, for tests. */
final class Series {

  static final Instant START = Instant.parse("2025-03-01T06:00:00Z");

  private Series() {}

  static Instant at(double seconds) {
    return START.plusNanos(Math.round(seconds * 1e9));
  }

  static Reading good(double seconds, double metres) {
    return Reading.good(metres, at(seconds));
  }

  static Reading uncertain(double seconds, double metres) {
    return new Reading(metres, Quality.uncertain(Cause.OUTSIDE_VESSEL), at(seconds));
  }

  static Reading held(double seconds, double metres) {
    return new Reading(metres, Quality.uncertain(Cause.NO_RETURN_HELD), at(seconds));
  }

  static Reading bad(double seconds) {
    return new Reading(0, Quality.bad(Cause.NO_RETURN), at(seconds));
  }
}
