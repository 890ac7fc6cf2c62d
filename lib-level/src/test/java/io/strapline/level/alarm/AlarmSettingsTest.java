package io.strapline.level.alarm;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.Refusal;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class AlarmSettingsTest {

  private static AlarmLimit limit(AlarmKind kind, double setPoint, double deadband) {
    return new AlarmLimit(kind, setPoint, deadband, 0, 0, AlarmHandling.DEFAULT);
  }

  private static AlarmSettings settings(AlarmLimit... limits) {
    return new AlarmSettings(List.of(limits), 0, AlarmHandling.DEFAULT);
  }

  @Test
  void keepsTheLimitsInTheOrderOfTheirKinds() {
    AlarmSettings settings =
        settings(
            limit(AlarmKind.LOW_LOW, 0.5, 0.1),
            limit(AlarmKind.HIGH, 8, 0.1),
            limit(AlarmKind.LOW, 1, 0.1),
            limit(AlarmKind.HIGH_HIGH, 9, 0.1));

    assertEquals(
        List.of(AlarmKind.HIGH_HIGH, AlarmKind.HIGH, AlarmKind.LOW, AlarmKind.LOW_LOW),
        settings.limits().stream().map(AlarmLimit::kind).toList());
  }

  @ParameterizedTest
  @CsvSource({
    "HIGH_HIGH, 9, HIGH, 9", "HIGH_HIGH, 9, HIGH, 9.1", "HIGH, 5, LOW, 5", "HIGH, 5, LOW, 6",
    "LOW, 1, LOW_LOW, 1", "LOW, 1, LOW_LOW, 2", "HIGH_HIGH, 9, LOW_LOW, 9.5", "HIGH, 5, LOW_LOW, 5"
  })
  void refusesSetPointsOutOfOrder(AlarmKind upper, double high, AlarmKind lower, double low) {
    assertRefused(
        "AlarmLimit.setPoint of " + lower,
        () -> settings(limit(upper, high, 0), limit(lower, low, 0)));
  }

  @Test
  void refusesTwoLimitsOfOneKind() {
    assertRefused(
        "AlarmSettings.limits",
        () -> settings(limit(AlarmKind.HIGH, 8, 0), limit(AlarmKind.HIGH, 9, 0)));
  }

  /** The other one would be set before the first clears. */
  @ParameterizedTest
  @CsvSource({
    "HIGH, 8, 7, LOW, 1",
    "HIGH, 8, 7.5, LOW, 1",
    "HIGH_HIGH, 8, 7, LOW_LOW, 1",
    "LOW, 1, 7, HIGH, 8",
    "LOW_LOW, 1, 9, HIGH_HIGH, 8"
  })
  void refusesADeadbandThatReachesTheOtherSide(
      AlarmKind kind, double setPoint, double deadband, AlarmKind opposite, double other) {
    AlarmLimit wide = limit(kind, setPoint, deadband);
    String field = "AlarmLimit.deadband of " + kind;

    assertRefused(field, () -> settings(wide, limit(opposite, other, 0)));
    assertTrue(
        Refusal.of(() -> settings(wide, limit(opposite, other, 0))).contains(opposite.name()));
  }

  @Test
  void takesDeadbandsThatOverlapOnTheSameSide() {
    assertDoesNotThrow(
        () ->
            settings(
                limit(AlarmKind.HIGH_HIGH, 95, 10),
                limit(AlarmKind.HIGH, 85, 10),
                limit(AlarmKind.LOW, 10, 6.9),
                limit(AlarmKind.LOW_LOW, 5, 20)));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1e-9})
  void refusesABadSignalDelayThatIsNegativeOrNotFinite(double wrong) {
    assertRefused(
        "AlarmSettings.badSignalOnDelay",
        () -> new AlarmSettings(List.of(), wrong, AlarmHandling.DEFAULT));
  }

  @Test
  void keepsItsLimitsWhenTheCallersListChanges() {
    List<AlarmLimit> mine = new ArrayList<>(List.of(limit(AlarmKind.HIGH, 8, 0)));
    AlarmSettings settings = new AlarmSettings(mine, 0, AlarmHandling.DEFAULT);
    mine.clear();

    assertEquals(1, settings.limits().size());
  }
}
