package io.strapline.level.signal;

import static io.strapline.level.signal.SignalFilterContract.at;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.strapline.level.reading.Reading;
import java.util.Random;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SurfaceTrendTest {

  private static void add(SurfaceTrend trend, double seconds, double metres) {
    trend.add(Reading.good(metres, at(seconds)));
  }

  @ParameterizedTest
  @ValueSource(doubles = {1.0 / 3, 1, 7, 60})
  void findsTheSpeedOfARampAtAnySampleInterval(double interval) {
    SurfaceTrend trend = new SurfaceTrend(300);
    for (int i = 0; i < 500; i++) {
      add(trend, i * interval, 9 - 0.002 * i * interval);
    }
    assertEquals(-0.002, trend.metresPerSecond(), 1e-9);
  }

  /** Against the regression of commons-math3, on uneven samples that all fit the memory. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void agreesWithALibraryOnUnevenSamples(long seed) {
    Random random = new Random(seed);
    SurfaceTrend trend = new SurfaceTrend(120);
    SimpleRegression library = new SimpleRegression();
    double time = 0;
    for (int i = 0; i < 20; i++) {
      time += 4.1 + random.nextDouble();
      double metres = 5 + 0.01 * time + 0.02 * random.nextGaussian();
      add(trend, time, metres);
      library.addData(time, metres);
    }
    assertEquals(library.getSlope(), trend.metresPerSecond(), 1e-9, "seed " + seed);
  }

  @Test
  void forgetsWhatLiesBeforeTheStretch() {
    SurfaceTrend trend = new SurfaceTrend(60);
    for (int i = 0; i <= 10; i++) {
      add(trend, 10 * i, 9 - i);
    }
    for (int i = 1; i <= 7; i++) {
      add(trend, 100 + 10 * i, -1);
    }
    assertEquals(0, trend.metresPerSecond(), 1e-12);
  }

  @Test
  void saysNothingFromFewerThanThreeSamplesOrAfterTheClockWasSetBack() {
    SurfaceTrend trend = new SurfaceTrend(60);
    add(trend, 0, 9);
    add(trend, 10, 8);
    add(trend, 10, 2);
    assertEquals(0, trend.metresPerSecond());
    add(trend, 20, 7);
    assertEquals(-0.1, trend.metresPerSecond(), 1e-12);
    add(trend, 5, 3);
    assertEquals(0, trend.metresPerSecond());
  }
}
