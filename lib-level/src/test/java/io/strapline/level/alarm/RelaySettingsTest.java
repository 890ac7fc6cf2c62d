package io.strapline.level.alarm;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.alarm.RelaySettings.Coil;
import io.strapline.level.alarm.RelaySettings.Delays;
import io.strapline.level.alarm.RelaySettings.Fallback;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RelaySettingsTest {

  @Test
  void areSafeUnlessTold() {
    RelaySettings safe = RelaySettings.safe(8, 7);

    assertEquals(Coil.DE_ENERGISED_IN_ALARM, safe.coil());
    assertEquals(Fallback.ALARM, safe.fallback());
    assertEquals(Delays.NONE, safe.delays());
    assertTrue(safe.isHigh());
    assertFalse(RelaySettings.safe(7, 8).isHigh());
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void refusesPointsThatAreNotFinite(double wrong) {
    assertRefused("RelaySettings.pickUp", () -> RelaySettings.safe(wrong, 7));
    assertRefused("RelaySettings.dropOut", () -> RelaySettings.safe(8, wrong));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1e-9})
  void refusesDelaysThatAreNegativeOrNotFinite(double wrong) {
    assertRefused("RelaySettings.delays.on", () -> new Delays(wrong, 0, 0));
    assertRefused("RelaySettings.delays.off", () -> new Delays(0, wrong, 0));
    assertRefused("RelaySettings.delays.badSignal", () -> new Delays(0, 0, wrong));
  }

  @Test
  void refusesEqualPoints() {
    assertRefused("RelaySettings.dropOut", () -> RelaySettings.safe(8, 8));
    assertRefused("RelaySettings.dropOut", () -> RelaySettings.safe(0.0, -0.0));
  }
}
