package io.strapline.bridge.model;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.function.LongSupplier;

/**
 * Real time that never goes back. The wall clock is read once, at the start; from then on the
 * machine's monotonic timer counts. So a wall clock that is set, forward or back, neither stops the
 * plant nor makes samples look old or from the future: source times go on by the time base of the
 * start, and {@link #wallAhead()} tells by how much they now differ. A restart takes up the new
 * wall time. Safe for any thread.
 */
public final class RealClock implements PlantClock {

  private final InstantSource wall;
  private final LongSupplier nanos;
  private final Instant start;
  private final long startNanos;

  RealClock(InstantSource wall, LongSupplier nanos) {
    this.wall = wall;
    this.nanos = nanos;
    start = wall.instant();
    startNanos = nanos.getAsLong();
  }

  /** Returns a clock that starts at the wall clock's time of now. */
  public static RealClock startNow() {
    return new RealClock(InstantSource.system(), System::nanoTime);
  }

  @Override
  public Instant instant() {
    return start.plusNanos(nanos.getAsLong() - startNanos);
  }

  /** Returns how far the wall clock is ahead of this clock; negative when it was set back. */
  public Duration wallAhead() {
    return Duration.between(instant(), wall.instant());
  }

  @Override
  public void awaitUntil(Instant time) throws InterruptedException {
    Waiting.until(time, this, 1);
  }
}
