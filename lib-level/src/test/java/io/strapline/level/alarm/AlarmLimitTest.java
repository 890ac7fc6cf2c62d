package io.strapline.level.alarm;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class AlarmLimitTest {

  private static AlarmLimit high(double setPoint, double deadband, double on, double off) {
    return new AlarmLimit(AlarmKind.HIGH, setPoint, deadband, on, off, AlarmHandling.DEFAULT);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void refusesASetPointThatIsNotFinite(double wrong) {
    assertRefused("AlarmLimit.setPoint", () -> high(wrong, 0, 0, 0));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1e-9})
  void refusesADeadbandOrDelayThatIsNegativeOrNotFinite(double wrong) {
    assertRefused("AlarmLimit.deadband", () -> high(9, wrong, 0, 0));
    assertRefused("AlarmLimit.onDelay", () -> high(9, 0, wrong, 0));
    assertRefused("AlarmLimit.offDelay", () -> high(9, 0, 0, wrong));
  }

  @Test
  void refusesToPutALimitOnTheBadSignal() {
    assertRefused(
        "AlarmLimit.kind",
        () -> new AlarmLimit(AlarmKind.BAD_SIGNAL, 9, 0, 0, 0, AlarmHandling.DEFAULT));
  }

  @Test
  void takesNegativeSetPointsBecauseTheDatumMayLieAboveTheFloor() {
    assertEquals(-2.5, high(-2, 0.5, 0, 0).clearPointMetres());
  }

  /** alarm_defaults.csv: H 80 % with 2 % deadband clears below 78 %, L 20 % above 22 %. */
  @ParameterizedTest
  @CsvSource({"HIGH, 80, 2, 78", "HIGH_HIGH, 80, 0, 80", "LOW, 20, 2, 22", "LOW_LOW, 20, 0, 20"})
  void clearsOneDeadbandAwayFromTheSetPoint(
      AlarmKind kind, double setPoint, double deadband, double clear) {
    AlarmLimit limit = new AlarmLimit(kind, setPoint, deadband, 0, 0, AlarmHandling.DEFAULT);

    assertEquals(clear, limit.clearPointMetres());
  }
}
