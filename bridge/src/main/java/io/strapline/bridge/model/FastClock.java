package io.strapline.bridge.model;

import java.time.Instant;
import java.time.InstantSource;
import java.util.Locale;
import java.util.function.LongSupplier;

/**
 * Simulated time that runs a fixed number of times faster than real time and never goes back. Safe
 * for any thread.
 */
public final class FastClock implements PlantClock {

  private static final double GREATEST_SPEED = 10_000;

  private final LongSupplier nanos;
  private final Instant start;
  private final long startNanos;
  private final double speed;

  FastClock(Instant start, double speed, LongSupplier nanos) {
    if (!(speed > 0 && speed <= GREATEST_SPEED)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "FastClock.speed = %s: must be greater than 0 and at most 10000; enter how many"
                  + " seconds of plant time pass in one second, such as 20",
              speed));
    }
    this.start = start;
    this.speed = speed;
    this.nanos = nanos;
    startNanos = nanos.getAsLong();
  }

  /**
   * Returns a clock that starts at the wall clock's time of now.
   *
   * @param speed seconds of plant time in one second, in (0, 10000]
   * @throws IllegalArgumentException if {@code speed} is outside its range or not a number
   */
  public static FastClock startNow(double speed) {
    return new FastClock(InstantSource.system().instant(), speed, System::nanoTime);
  }

  @Override
  public Instant instant() {
    double elapsed = (nanos.getAsLong() - startNanos) * speed;
    return start.plusNanos((long) elapsed);
  }

  @Override
  public void awaitUntil(Instant time) throws InterruptedException {
    Waiting.until(time, this, speed);
  }
}
