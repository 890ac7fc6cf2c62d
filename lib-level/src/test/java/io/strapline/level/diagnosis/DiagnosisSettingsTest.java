package io.strapline.level.diagnosis;

import static io.strapline.level.testing.Refusals.assertRefused;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DiagnosisSettingsTest {

  private static final HoldOff HOLD = HoldOff.MINUTE;
  private static final Learning LEARNING = Learning.USUAL;

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1, 0})
  void refusesWhatMustBeGreaterThanZero(double wrong) {
    assertRefused("Learning.least", () -> new Learning(wrong, 100));
    assertRefused("Learning.timeConstant", () -> new Learning(1, wrong));
    assertRefused("StrengthCheck.recent", () -> new StrengthCheck(0.3, 0.6, wrong, LEARNING, HOLD));
    assertRefused("StrengthCheck.lowShare", () -> new StrengthCheck(wrong, 0.6, 1, LEARNING, HOLD));
    assertRefused(
        "StrengthCheck.fallingShare", () -> new StrengthCheck(0.3, wrong, 1, LEARNING, HOLD));
    assertRefused("NoiseCheck.factor", () -> new NoiseCheck(wrong, 0, LEARNING, HOLD));
    assertRefused("StuckCheck.band", () -> new StuckCheck(wrong, 1, 1));
    assertRefused("StuckCheck.flowTime", () -> new StuckCheck(1, wrong, 1));
    assertRefused("RateCheck.nearing", () -> new RateCheck(wrong, 1, 1, 0, HOLD));
    assertRefused("RateCheck.leaving", () -> new RateCheck(1, wrong, 1, 0, HOLD));
    assertRefused("RateCheck.window", () -> new RateCheck(1, 1, wrong, 0, HOLD));
    assertRefused("CurrentCheck.band", () -> new CurrentCheck(3.8, 20.5, wrong, 16, HOLD));
    assertRefused("ReachCheck.bottom", () -> new ReachCheck(wrong, 1, 1, 1, HOLD));
    assertRefused("ReachCheck.window", () -> new ReachCheck(1, 1, 1, wrong, HOLD));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1})
  void refusesWhatMustNotBeNegative(double wrong) {
    assertRefused("NoiseCheck.least", () -> new NoiseCheck(3, wrong, LEARNING, HOLD));
    assertRefused("StuckCheck.frozenTime", () -> new StuckCheck(1, 1, wrong));
    assertRefused("RateCheck.resolution", () -> new RateCheck(1, 1, 1, wrong, HOLD));
    assertRefused("ReachCheck.margin", () -> new ReachCheck(1, wrong, 1, 1, HOLD));
    assertRefused("ReachCheck.zeroStrength", () -> new ReachCheck(1, 1, wrong, 1, HOLD));
    assertRefused("Baseline.strength", () -> new Baseline(wrong, 0, 0, 0));
    assertRefused("Baseline.strengthTime", () -> new Baseline(0, wrong, 0, 0));
    assertRefused("Baseline.noise", () -> new Baseline(0, 0, wrong, 0));
    assertRefused("Baseline.noiseTime", () -> new Baseline(0, 0, 0, wrong));
  }

  @Test
  void refusesWhatLiesOutsideItsRange() {
    assertRefused("StrengthCheck.lowShare", () -> new StrengthCheck(1, 0.6, 1, LEARNING, HOLD));
    assertRefused("NoiseCheck.factor", () -> new NoiseCheck(1, 0, LEARNING, HOLD));
    assertRefused("Learning.timeConstant", () -> new Learning(100, 99));
    assertRefused("CurrentCheck.lowEnd", () -> new CurrentCheck(4, 20.5, 0.01, 16, HOLD));
    assertRefused("CurrentCheck.lowEnd", () -> new CurrentCheck(0, 20.5, 0.01, 16, HOLD));
    assertRefused("CurrentCheck.highEnd", () -> new CurrentCheck(3.8, 20, 0.01, 16, HOLD));
    assertRefused("CurrentCheck.flatFrom", () -> new CurrentCheck(3.8, 20.5, 0.01, 20, HOLD));
    assertRefused("CurrentCheck.flatFrom", () -> new CurrentCheck(3.8, 20.5, 0.01, 4, HOLD));
  }
}
