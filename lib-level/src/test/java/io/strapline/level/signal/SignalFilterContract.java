package io.strapline.level.signal;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import java.time.Duration;
import java.time.Instant;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What every stage must do, whatever it computes. */
abstract class SignalFilterContract {

  static final Instant START = Instant.parse("2024-05-01T06:00:00Z");

  /** Returns a stage that has seen nothing yet. */
  abstract SignalFilter stage();

  static Instant at(double seconds) {
    return START.plus(Duration.ofNanos(Math.round(seconds * 1e9)));
  }

  static double feed(SignalFilter stage, double seconds, double value) {
    return stage.apply(Reading.good(value, at(seconds))).value();
  }

  private static Reading bad(double seconds) {
    return new Reading(0, Quality.bad(Cause.NO_RETURN), at(seconds));
  }

  /** Never ramp up from zero: M14 section 4.2; a start at zero is wrong for minutes. */
  @Test
  void startsAtTheFirstUsableSample() {
    SignalFilter stage = stage();
    stage.apply(bad(0));

    assertEquals(7.25, feed(stage, 1, 7.25));
    assertEquals(7.25, feed(stage, 2, 7.25));
  }

  @Test
  void passesABadReadingUnchangedAndKeepsItsState() {
    SignalFilter disturbed = stage();
    SignalFilter quiet = stage();
    for (double value : new double[] {4, 5, 5.5}) {
      feed(disturbed, value, value);
      feed(quiet, value, value);
    }
    Reading bad = bad(5.6);

    assertEquals(bad, disturbed.apply(bad));
    assertEquals(feed(quiet, 6, 9), feed(disturbed, 6, 9));
  }

  @Test
  void startsAnewAfterAReset() {
    SignalFilter stage = stage();
    feed(stage, 0, 4);
    feed(stage, 1, 5);
    stage.reset();

    assertEquals(20, feed(stage, 2, 20));
  }

  @Test
  void staysInsideTheRangeOfItsInputsForAnyTimesAndValues() {
    for (long seed = 1; seed <= 40; seed++) {
      Random random = new Random(seed);
      SignalFilter stage = stage();
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      double time = 0;
      for (int i = 0; i < 60; i++) {
        // Now and then the time stands still or goes back.
        time += random.nextInt(5) == 0 ? -random.nextDouble() : random.nextDouble();
        double value = 40 * random.nextDouble() - 5;
        low = Math.min(low, value);
        high = Math.max(high, value);
        double output = feed(stage, time, value);
        boolean inside = output >= low - 1e-12 && output <= high + 1e-12;
        assertTrue(inside, "seed " + seed + " sample " + i + ": " + output);
      }
    }
  }

  @Test
  void givesAFiniteValueForEveryFiniteInput() {
    double[] extremes = {
      Double.MAX_VALUE, -Double.MAX_VALUE, 0, -0.0, Double.MIN_VALUE, 1e300, -1e300
    };
    for (long seed = 1; seed <= 40; seed++) {
      Random random = new Random(seed);
      SignalFilter stage = stage();
      for (int i = 0; i < 60; i++) {
        double value = extremes[random.nextInt(extremes.length)];
        double output = feed(stage, i * random.nextDouble(), value);
        assertTrue(Double.isFinite(output), "seed " + seed + " sample " + i + ": " + output);
      }
    }
  }

  @Test
  void carriesQualityAndTimeOfTheSampleThrough() {
    SignalFilter stage = stage();
    feed(stage, 0, 4);
    Quality under = Quality.uncertain(Cause.LOOP_UNDER_RANGE);
    Reading output = stage.apply(new Reading(5, under, at(1)));

    assertEquals(under, output.quality());
    assertEquals(at(1), output.time());
  }

  @Test
  void refusesAnIntervalThatIsNoTime() {
    double[] wrong = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 0, -1};
    for (double interval : wrong) {
      assertRefused("SignalFilter.sampleInterval", () -> stage().delaySeconds(interval));
    }
  }

  /** Feeds a ramp of 1 m/s until the start has died out and returns how late the output is. */
  static double delayOnARamp(SignalFilter stage, double interval) {
    double late = 0;
    for (int i = 0; i < 5000; i++) {
      double time = i * interval;
      late = time - feed(stage, time, time);
    }
    return late;
  }
}
