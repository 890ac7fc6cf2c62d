package io.strapline.bridge.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.testing.Refused;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FastClockTest {

  private static final Instant START = Instant.parse("2026-03-01T06:00:00Z");

  private final AtomicLong nanos = new AtomicLong(77);

  @ParameterizedTest
  @ValueSource(doubles = {0.5, 1, 20, 10_000})
  void runsSoManyTimesFasterThanRealTime(double speed) {
    FastClock clock = new FastClock(START, speed, nanos::get);
    nanos.addAndGet(Duration.ofMinutes(3).toNanos());
    assertEquals(START.plusNanos((long) (180e9 * speed)), clock.instant());
  }

  @ParameterizedTest
  @ValueSource(
      doubles = {
        0,
        -0.0,
        -1,
        10_000.0001,
        Double.NaN,
        Double.POSITIVE_INFINITY,
        Double.NEGATIVE_INFINITY
      })
  void refusesASpeedOutsideItsRange(double speed) {
    String refused =
        Refused.message(IllegalArgumentException.class, () -> FastClock.startNow(speed));
    assertTrue(refused.startsWith("FastClock.speed = "), refused);
    assertTrue(refused.contains("such as 20"), refused);
  }

  @Test
  void waitsInPlantTime() throws InterruptedException {
    FastClock clock = FastClock.startNow(10_000);
    Instant time = clock.instant().plusSeconds(60);
    clock.awaitUntil(time);
    assertFalse(clock.instant().isBefore(time));
  }
}
