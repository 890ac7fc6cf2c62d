package io.strapline.level.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.CsvRow;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MovingAverageTest extends SignalFilterContract {

  @Override
  SignalFilter stage() {
    return MovingAverage.of(7);
  }

  @Test
  void agreesWithTheVectors() {
    assertEquals(32, FilterVectors.check("moving_average", row -> MovingAverage.of(samples(row))));
  }

  private static int samples(CsvRow row) {
    return FilterVectors.parameter(row, "N").intValue();
  }

  /** filters.csv: a step reaches its final value after N samples. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 5, 1000})
  void reachesAStepInFullAfterItsWindowAndNotBefore(int samples) {
    MovingAverage average = MovingAverage.of(samples);
    feed(average, 0, 1);
    for (int i = 1; i < samples; i++) {
      assertTrue(feed(average, i, 3) < 3, "sample " + i);
    }

    assertEquals(3, feed(average, samples, 3));
  }

  /** filters.csv: group delay (N-1)/2 samples (dsp.stackexchange.com, question 42872). */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 5, 8, 1000})
  void isLateOnARampByTheDelayItStates(int samples) {
    double late = delayOnARamp(MovingAverage.of(samples), 0.5);

    assertEquals((samples - 1) / 2.0 * 0.5, late, 1e-7);
    assertEquals(MovingAverage.of(samples).delaySeconds(0.5), late, 1e-7);
  }

  /** filters.csv: random noise falls by sqrt(N) times. */
  @Test
  void lowersWhiteNoiseByTheRootOfItsWindow() {
    long seed = 20240501;
    double ratio = Noise.ratio(MovingAverage.of(10), new Random(seed));

    assertEquals(1 / Math.sqrt(10), ratio, 0.01, "seed " + seed);
  }

  /** A running sum would keep what is left of the great value in its last digits. */
  @Test
  void forgetsAGreatValueCompletely() {
    MovingAverage average = MovingAverage.of(3);
    for (double value : new double[] {0.1, 1e17, 0.1, 0.1}) {
      feed(average, 0, value);
    }

    assertEquals(0.1, feed(average, 1, 0.1), 1e-16);
  }
}
