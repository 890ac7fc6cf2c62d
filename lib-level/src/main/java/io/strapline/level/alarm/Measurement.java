package io.strapline.level.alarm;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import java.util.OptionalDouble;

/** What of a reading may be judged against a limit. Stateless. */
final class Measurement {

  private Measurement() {}

  /** Returns the value if it was measured; empty when it is BAD, substituted or only held. */
  static OptionalDouble of(Reading level) {
    Quality quality = level.quality();
    return isBadSignal(quality) || quality.cause().isHeld()
        ? OptionalDouble.empty()
        : level.usable();
  }

  /** Returns whether there is no measurement and nothing to wait for. */
  static boolean isBadSignal(Quality quality) {
    return quality.isBad() || quality.cause() == Cause.SUBSTITUTED;
  }
}
