package io.strapline.level.signal;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class GateSettingsTest {

  private static GateSettings zones(double deadZone, double farLimit) {
    return new GateSettings(deadZone, farLimit, OptionalDouble.empty(), List.of());
  }

  private static GateSettings codes(List<Double> codes) {
    return new GateSettings(0, 30, OptionalDouble.empty(), codes);
  }

  @ParameterizedTest
  @ValueSource(
      doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1e-9, -0.3})
  void refusesADeadZoneThatIsNoDistance(double deadZone) {
    assertRefused("GateSettings.deadZone", () -> zones(deadZone, 30));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.NEGATIVE_INFINITY, -1, 0, 0.4999, 0.5})
  void refusesAFarLimitThatDoesNotLieBeyondTheDeadZone(double farLimit) {
    assertRefused("GateSettings.farLimit", () -> zones(0.5, farLimit));
    assertTrue(Refusal.of(() -> zones(0.5, farLimit)).contains("dead zone (0.5 m)"));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.5000001, 30, Double.MAX_VALUE, Double.POSITIVE_INFINITY})
  void takesAnyFarLimitBeyondTheDeadZone(double farLimit) {
    assertTrue(Gates.of(zones(0.5, farLimit)).judge(0.5, OptionalDouble.empty()).isGood());
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void refusesALeastStrengthThatIsNotFinite(double strength) {
    assertRefused(
        "GateSettings.leastStrength",
        () -> new GateSettings(0, 30, OptionalDouble.of(strength), List.of()));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void namesThePlaceOfACodeThatIsNotFinite(double code) {
    assertRefused("GateSettings.invalidCodes[1]", () -> codes(List.of(8190.0, code)));
  }

  @Test
  void comparesInvalidCodesExactly() {
    GateSettings settings = codes(List.of(8190.0, -1.0, 0.0));

    for (double code : new double[] {8190, -1, 0, -0.0}) {
      assertTrue(settings.isInvalidCode(code), "code " + code);
    }
    for (double value : new double[] {Math.nextUp(8190.0), Math.nextDown(8190.0), 1, 8.19}) {
      assertFalse(settings.isInvalidCode(value), "value " + value);
    }
    for (double broken : new double[] {Double.NaN, Double.POSITIVE_INFINITY}) {
      assertFalse(settings.isInvalidCode(broken), "not finite, so a matter of another gate");
    }
  }

  @Test
  void keepsItsCodesWhenTheCallersListChanges() {
    List<Double> mine = new ArrayList<>(List.of(8190.0));
    GateSettings settings = codes(mine);
    mine.clear();

    assertTrue(settings.isInvalidCode(8190));
  }

  @Test
  void treatsBothZerosAsTheSameSetting() {
    assertEquals(zones(0.0, 30), zones(-0.0, 30));
  }
}
