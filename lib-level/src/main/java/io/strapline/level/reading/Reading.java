package io.strapline.level.reading;

import io.strapline.level.internal.Check;
import java.time.Instant;
import java.util.OptionalDouble;

/**
 * A finite value with its quality and its source time. Immutable.
 *
 * @param value in the SI unit that the context states; always finite; at BAD it is the last known
 *     value or zero and must not be used
 * @param quality how far the value may be trusted
 * @param time when the device measured, in UTC; never the time of calculation
 */
public record Reading(double value, Quality quality, Instant time) {

  /** Refuses a value that is not finite. */
  public Reading {
    value =
        Check.finite(
            "Reading.value", value, "", "pass a finite value and say in the quality what is wrong");
    Check.present("Reading.quality", quality, "give the quality");
    Check.present("Reading.time", time, "give the source time");
  }

  /** Returns a valid measurement. */
  public static Reading good(double value, Instant time) {
    return new Reading(value, Quality.GOOD, time);
  }

  /** Returns the value, or nothing when the quality is BAD. */
  public OptionalDouble usable() {
    return quality.isBad() ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  /**
   * Returns a reading of the same time whose quality is the worse of this one and {@code other}.
   */
  public Reading derived(double newValue, Quality other) {
    return new Reading(newValue, Quality.worst(quality, other), time);
  }
}
