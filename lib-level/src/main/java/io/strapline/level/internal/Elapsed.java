package io.strapline.level.internal;

import java.time.Duration;
import java.time.Instant;

/**
 * Time between two instants, for holds and delays. Stateless.
 *
 * <p>Delays are compared in whole nanoseconds, so that a delay of 0.3 s ends exactly at the sample
 * 0.3 s later and not one sample after it.
 */
public final class Elapsed {

  private static final double NANOS_PER_SECOND = 1e9;

  private Elapsed() {}

  /**
   * Returns a delay rounded to the nanosecond.
   *
   * @param seconds finite, zero or more; longer than about 292 years counts as that
   */
  public static Duration delay(double seconds) {
    return Duration.ofNanos(Math.round(seconds * NANOS_PER_SECOND));
  }

  /** Returns whether {@code delay} or more lies between the two; never when time went back. */
  public static boolean reached(Instant from, Instant to, Duration delay) {
    return Duration.between(from, to).compareTo(delay) >= 0;
  }

  /** Returns the seconds from {@code from} to {@code to}, negative when time went back. */
  public static double seconds(Instant from, Instant to) {
    Duration between = Duration.between(from, to);
    return between.getSeconds() + between.getNano() / NANOS_PER_SECOND;
  }
}
