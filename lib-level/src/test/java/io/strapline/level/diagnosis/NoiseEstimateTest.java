package io.strapline.level.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NoiseEstimateTest {

  /** The constant is the reciprocal of the upper quartile of the normal distribution. */
  @Test
  void usesTheConstantOfTheNormalDistribution() {
    assertEquals(1.4826, 1 / new NormalDistribution().inverseCumulativeProbability(0.75), 5e-5);
  }

  /** Mean over many windows against the standard deviation that commons-math3 finds. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.01, -0.5})
  void findsTheStandardDeviationOfNoiseOnAnyRamp(double metresPerSample) {
    Random random = new Random(5);
    NoiseEstimate estimate = new NoiseEstimate();
    SummaryStatistics library = new SummaryStatistics();
    double sum = 0;
    int windows = 0;
    for (int i = 0; i < 31 * 300; i++) {
      double noise = 0.005 * random.nextGaussian();
      library.addValue(noise);
      estimate.add(8 + metresPerSample * i + noise, Feed.at(i));
      if (i % 31 == 30 && estimate.isFull()) {
        sum += estimate.sigma();
        windows++;
      }
    }
    // The median of 31 differences scatters by about a sixth; 300 windows leave one percent of it.
    assertEquals(library.getStandardDeviation(), sum / windows, 0.0005);
  }

  /** Six outliers in 31 samples (twelve of the 31 differences) do not spoil it. */
  @Test
  void isRobustAgainstOutliers() {
    Random random = new Random(6);
    NoiseEstimate estimate = new NoiseEstimate();
    for (int i = 0; i < 200; i++) {
      double outlier = i % 6 == 0 ? 4 : 0;
      estimate.add(8 - outlier + 0.005 * random.nextGaussian(), Feed.at(i));
    }
    assertTrue(estimate.sigma() < 0.015, "sigma " + estimate.sigma());
  }

  @Test
  void countsNoRepeatedSampleAndNoStepOverAGap() {
    NoiseEstimate estimate = new NoiseEstimate();
    for (int i = 0; i < 100; i++) {
      estimate.add(8, Feed.at(0));
    }
    assertFalse(estimate.isFull());
    for (int i = 0; i <= 31; i++) {
      estimate.interrupt();
      estimate.add(i, Feed.at(2 * i));
      estimate.add(i, Feed.at(2 * i + 1));
    }
    assertTrue(estimate.isFull());
    assertEquals(0, estimate.sigma());
  }
}
