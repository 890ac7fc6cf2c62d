package io.strapline.level.signal;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SignalSettingsTest {

  private static SignalSettings settings(int median, int average, double lag) {
    return new SignalSettings(GateSettings.OPEN, NoReturnPolicy.fail(), median, average, lag);
  }

  @ParameterizedTest
  @ValueSource(ints = {Integer.MIN_VALUE, -1, 0, 2, 4, 98, 100, 101, Integer.MAX_VALUE})
  void refusesAMedianThatIsEvenOrOutsideOneToNinetyNine(int samples) {
    assertRefused("SignalSettings.medianSamples", () -> settings(samples, 1, 0));
    assertRefused("Median.samples", () -> Median.of(samples));
  }

  @ParameterizedTest
  @ValueSource(ints = {Integer.MIN_VALUE, -1, 0, 1001, Integer.MAX_VALUE})
  void refusesAnAverageOutsideOneToAThousand(int samples) {
    assertRefused("SignalSettings.averageSamples", () -> settings(1, samples, 0));
    assertRefused("MovingAverage.samples", () -> MovingAverage.of(samples));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1e-9})
  void refusesALagThatIsNoTime(double seconds) {
    assertRefused("SignalSettings.lag", () -> settings(1, 1, seconds));
    assertRefused("FirstOrderLag.timeConstant", () -> FirstOrderLag.of(seconds));
  }

  /** (99-1)/2 + (1000-1)/2 samples of 2 s and the time constant. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 60, 1e6})
  void takesTheWidestSettings(double lagSeconds) {
    SignalChain chain = SignalChain.of(settings(99, 1000, lagSeconds));

    assertEquals(98 + 999 + lagSeconds, chain.delaySeconds(2), 1e-9);
  }
}
