package io.strapline.level.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ElapsedTest {

  private static final Instant START = Instant.parse("2024-05-01T06:00:00Z");

  /** In binary 3 x 0.1 s is more than 0.3 s; on a clock of nanoseconds it is not. */
  @ParameterizedTest
  @CsvSource({"0.3, 300000000", "0.1, 100000000", "59.7, 59700000000", "0, 0", "1e-9, 1"})
  void endsADelayOnTheNanosecond(double seconds, long nanos) {
    Duration delay = Elapsed.delay(seconds);

    assertTrue(Elapsed.reached(START, START.plusNanos(nanos), delay));
    assertFalse(Elapsed.reached(START, START.plusNanos(nanos - 1), delay));
  }

  @Test
  void neverReachesADelayBackwards() {
    assertFalse(Elapsed.reached(START, START.minusNanos(1), Duration.ZERO));
  }

  @Test
  void bearsDelaysAndSpansLongerThanALongOfNanoseconds() {
    assertEquals(Duration.ofNanos(Long.MAX_VALUE), Elapsed.delay(Double.MAX_VALUE));
    double allTime = Elapsed.seconds(Instant.EPOCH, Instant.MAX);
    assertEquals((double) Instant.MAX.getEpochSecond(), allTime, 8, "to the last bit or so");
  }

  @Test
  void countsBackwardsInNegativeSeconds() {
    assertEquals(-1.5, Elapsed.seconds(START, START.minusMillis(1500)));
    assertEquals(0.25, Elapsed.seconds(START, START.plusMillis(250)));
  }
}
