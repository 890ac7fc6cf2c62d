package io.strapline.bridge.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;

class RealClockTest {

  private static final Instant START = Instant.parse("2026-03-01T06:00:00Z");

  private final AtomicReference<Instant> wall = new AtomicReference<>(START);
  private final AtomicLong nanos = new AtomicLong(-5_000_000_000L);
  private final RealClock clock = new RealClock(wall::get, nanos::get);

  @Test
  void countsFromTheWallTimeOfTheStartByTheMonotonicTimer() {
    nanos.addAndGet(1_500_000_000L);
    assertEquals(START.plusMillis(1500), clock.instant());
  }

  @Test
  void goesOnWhenTheWallClockIsSetBackAndTellsByHowMuch() {
    wall.set(START.minus(Duration.ofHours(1)));
    nanos.addAndGet(2_000_000_000L);
    assertEquals(START.plusSeconds(2), clock.instant());
    assertEquals(Duration.ofHours(-1).minusSeconds(2), clock.wallAhead());
  }

  @Test
  void doesNotJumpWhenTheWallClockIsSetForward() {
    wall.set(START.plus(Duration.ofDays(400)));
    assertEquals(START, clock.instant());
    assertEquals(Duration.ofDays(400), clock.wallAhead());
  }

  @Test
  void returnsAtOnceForATimeThatHasPassed() throws InterruptedException {
    clock.awaitUntil(START.minusSeconds(1));
    clock.awaitUntil(START);
    assertEquals(START, clock.instant());
  }

  @Test
  void waitsForATimeAheadInRealTime() throws InterruptedException {
    RealClock real = RealClock.startNow();
    Instant time = real.instant().plusMillis(20);
    real.awaitUntil(time);
    assertFalse(real.instant().isBefore(time));
  }
}
