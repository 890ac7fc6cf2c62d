package io.strapline.level.inventory;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FlowSettingsTest {

  @Test
  void tellsTheSpeedOfOneStepOverTheWindow() {
    FlowSettings settings = FlowSettings.of(60, 0.003);
    assertEquals(0.00005, settings.limitMetresPerSecond(), 1e-18);
    assertEquals(0.000075, settings.deadZoneMetresPerSecond(), 1e-18);
  }

  // 2 mm over 60 s with 60 samples: 0.002 / 60 x sqrt(0.2) by hand.
  @Test
  void tellsTheNoiseOfTheSpeed() {
    assertEquals(1.490_712e-5, FlowSettings.of(60, 0.001).noise(0.002, 60), 1e-11);
    assertEquals(0, FlowSettings.of(60, 0.001).noise(0, 60));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1, 0, 0.0999, 2_678_401})
  void refusesWindows(double wrong) {
    assertRefused("FlowSettings.window", () -> FlowSettings.of(wrong, 0.001));
    assertRefused("FlowSettings.window", () -> new FlowSettings(wrong, 0.001, 1));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1, 0, 10.1})
  void refusesResolutions(double wrong) {
    assertRefused("FlowSettings.resolution", () -> FlowSettings.of(60, wrong));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1, 0, 0.0149999})
  void refusesDeadZonesThatOneStepCanLeave(double wrong) {
    assertRefused("FlowSettings.deadZone", () -> new FlowSettings(0.1, 0.001, wrong));
    assertEquals(0.015, new FlowSettings(0.1, 0.001, 0.015).deadZoneMetresPerSecond());
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1e-9})
  void refusesNoiseThatCannotBe(double wrong) {
    assertRefused("FlowSettings.sigma", () -> FlowSettings.of(60, 0.001).noise(wrong, 60));
    assertRefused("FlowSettings.samples", () -> FlowSettings.of(60, 0.001).noise(0.001, 1));
  }
}
