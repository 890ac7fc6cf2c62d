package io.strapline.level.signal;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RateLimiterTest extends SignalFilterContract {

  private static final Quality LIMITED = Quality.uncertain(Cause.RATE_LIMITED);

  @Override
  SignalFilter stage() {
    return RateLimiter.of(SpeedLimits.constant(0.5, 0.5), 100);
  }

  private static RateLimiter limiter(double nearing, double leaving, double tolerance) {
    return RateLimiter.of(SpeedLimits.constant(nearing, leaving), tolerance);
  }

  private static Reading reading(RateLimiter limiter, double seconds, double metres) {
    return limiter.apply(Reading.good(metres, at(seconds)));
  }

  @Test
  void agreesWithTheVectors() {
    assertEquals(12, FilterVectors.check("slew_limit", row -> limiter(0.5, 0.5, 0)));
  }

  /** filters.csv: time for a step D is D / rate. */
  @ParameterizedTest
  @CsvSource({"10, 4, 60", "4, 10, 30", "10, 9.95, 0.5"})
  void reachesAStepAfterTheStatedTimeAndIsMarkedOnTheWay(double from, double to, double seconds) {
    RateLimiter limiter = limiter(0.1, 0.2, 0);
    assertEquals(seconds, limiter.stepSeconds(from, to), 1e-9);
    reading(limiter, 0, from);
    double time = 0;
    Reading output;
    do {
      time += 0.25;
      output = reading(limiter, time, to);
      assertEquals(output.value() == to ? Quality.GOOD : LIMITED, output.quality());
    } while (output.value() != to && time < 100);

    assertEquals(seconds, time, 0.25 + 1e-9);
  }

  @Test
  void passesARampSlowerThanTheLimitAsItIs() {
    RateLimiter limiter = limiter(0.1, 0.2, 0);
    for (int i = 0; i < 200; i++) {
      assertEquals(Reading.good(30 - 0.05 * i, at(i)), reading(limiter, i, 30 - 0.05 * i));
    }
    assertEquals(0, limiter.delaySeconds(1));
  }

  /** Noise of 5 mm at three samples a second is 21 mm/s of seeming speed, and no excess of rate. */
  @Test
  void doesNotMarkNoiseWithinTheTolerance() {
    RateLimiter limiter = limiter(0.002, 0.002, 0.03);
    java.util.Random random = new java.util.Random(7);
    for (int i = 0; i < 5000; i++) {
      double noise = Math.max(-0.015, Math.min(0.015, 0.005 * random.nextGaussian()));
      assertTrue(reading(limiter, i / 3.0, 8 + noise).quality().isGood(), "sample " + i);
    }
  }

  @Test
  void countsNoTimeForRepeatedAndOlderSamples() {
    RateLimiter limiter = limiter(0.1, 0.1, 0);
    reading(limiter, 10, 8);
    assertEquals(8, reading(limiter, 10, 5).value());
    assertEquals(8, reading(limiter, 4, 5).value());
    assertEquals(7.9, reading(limiter, 11, 5).value(), 1e-12);
  }

  /** By hand: 0.1 m/s above 6 m of distance, 1 m/s below: 20 s and then 2 s. */
  @Test
  void takesTheLimitAtItsOwnDistance() {
    SpeedLimits narrow =
        new SpeedLimits() {
          @Override
          public double nearing(double distanceMetres) {
            return distanceMetres > 6 ? 0.1 : 1;
          }

          @Override
          public double leaving(double distanceMetres) {
            return Double.POSITIVE_INFINITY;
          }
        };
    RateLimiter limiter = RateLimiter.of(narrow, 0);
    assertEquals(22, limiter.stepSeconds(8, 4), 1e-9);
    assertEquals(0, limiter.stepSeconds(4, 8));
    reading(limiter, 0, 8);
    assertEquals(6, reading(limiter, 20, 4).value(), 1e-9);
    // One sample over the whole way, in sixteen pieces, ends within one piece of it.
    limiter.reset();
    reading(limiter, 0, 8);
    assertEquals(4, reading(limiter, 24, 4).value(), 1e-9);
    assertEquals(8, reading(limiter, 25, 8).value());
  }

  @Test
  void marksNothingBetterThanItCame() {
    Quality under = Quality.uncertain(Cause.LOOP_UNDER_RANGE);
    RateLimiter limiter = limiter(0.1, 0.1, 0);
    limiter.apply(new Reading(8, under, at(0)));
    assertEquals(under, limiter.apply(new Reading(2, under, at(1))).quality());
    assertTrue(!limiter.isBack());
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.NEGATIVE_INFINITY, -1, 0})
  void refusesALimitThatIsNoSpeed(double wrong) {
    assertRefused("SpeedLimits.nearing", () -> SpeedLimits.constant(wrong, 1));
    assertRefused("SpeedLimits.leaving", () -> SpeedLimits.constant(1, wrong));
    assertRefused("RateSettings.rise", () -> RateSettings.flow(wrong, 1, 0));
    assertRefused("RateSettings.fall", () -> RateSettings.speed(1, wrong, 0));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -0.001})
  void refusesAToleranceThatIsNoLength(double wrong) {
    assertRefused("RateLimiter.tolerance", () -> limiter(1, 1, wrong));
    assertRefused("RateSettings.tolerance", () -> RateSettings.speed(1, 1, wrong));
    assertRefused("LostBeamSettings.margin", () -> new LostBeamSettings(wrong, 60));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, 0, -1})
  void refusesAHorizonThatIsNoTime(double wrong) {
    assertRefused("LostBeamSettings.horizon", () -> new LostBeamSettings(0.2, wrong));
  }
}
