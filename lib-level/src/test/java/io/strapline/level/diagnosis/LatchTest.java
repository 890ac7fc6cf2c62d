package io.strapline.level.diagnosis;

import static io.strapline.level.diagnosis.Feed.at;
import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Diagnostic;
import io.strapline.level.reading.DiagnosticStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LatchTest {

  @Test
  void tellsASymptomAfterItsTimeAndDropsItAfterItsTime() {
    Latch latch = new Latch(Cause.NOISE_HIGH, new HoldOff(10, 5));
    latch.update(true, at(0));
    latch.update(true, at(9.999999999));
    assertFalse(latch.isActive());
    latch.update(true, at(10));
    assertEquals(
        new Diagnostic(DiagnosticStatus.OUT_OF_SPECIFICATION, Cause.NOISE_HIGH, at(10)),
        latch.diagnostic().orElseThrow());
    latch.update(false, at(11));
    latch.update(false, at(15.999999999));
    assertTrue(latch.isActive());
    latch.update(false, at(16));
    assertTrue(latch.diagnostic().isEmpty());
  }

  @Test
  void startsAnewWhenTheSymptomWasGoneInBetween() {
    Latch latch = new Latch(Cause.NOISE_HIGH, new HoldOff(10, 5));
    for (int i = 0; i < 100; i++) {
      latch.update(i % 9 != 0, at(i));
      assertFalse(latch.isActive());
    }
  }

  @Test
  void staysNoLongerWhenTheClockIsSetBack() {
    Latch latch = new Latch(Cause.NOISE_HIGH, new HoldOff(10, 5));
    latch.update(true, at(5000));
    latch.update(true, at(0));
    latch.update(true, at(10));
    assertTrue(latch.isActive());
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1})
  void refusesAHoldOffThatIsNoTime(double wrong) {
    assertRefused("HoldOff.on", () -> new HoldOff(wrong, 1));
    assertRefused("HoldOff.off", () -> new HoldOff(1, wrong));
  }
}
