package io.strapline.level.signal;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;

import io.strapline.level.signal.ObstructionSettings.Doubt;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ObstructionSettingsTest {

  private static final Doubt DOUBT = new Doubt(0.3, 3, 5);

  @ParameterizedTest
  @ValueSource(
      doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1, -0.0, 0})
  void refusesANumberThatIsNotGreaterThanZero(double wrong) {
    assertRefused("ObstructionSettings.beyond", () -> new Doubt(wrong, 3, 5));
    assertRefused(
        "ObstructionSettings.band", () -> new ObstructionSettings(DOUBT, DOUBT, wrong, 10));
    assertRefused(
        "ObstructionSettings.acceptAfter", () -> new ObstructionSettings(DOUBT, DOUBT, 0.1, wrong));
  }

  @ParameterizedTest
  @CsvSource({"0, 5", "-1, 5", "2, 5", "6, 5", "1, 2", "50, 100"})
  void refusesACountThatIsNoMajority(int agreeing, int of) {
    String field = of > 99 ? "of" : "agreeing";
    assertRefused("ObstructionSettings." + field, () -> new Doubt(0.3, agreeing, of));
  }

  @ParameterizedTest
  @CsvSource({"1, 1", "2, 2", "2, 3", "3, 5", "5, 5", "50, 99", "99, 99"})
  void takesEveryMajority(int agreeing, int of) {
    assertDoesNotThrow(() -> new Doubt(0.3, agreeing, of));
  }
}
