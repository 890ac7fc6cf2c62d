package io.strapline.level.signal;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NoReturnPolicyTest {

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1e-9})
  void refusesNumbersThatAreNoTimeAndNoDistance(double wrong) {
    assertRefused("NoReturnPolicy.hold", () -> NoReturnPolicy.hold(wrong));
    assertRefused("NoReturnPolicy.hold", () -> NoReturnPolicy.substitute(wrong, 1));
    assertRefused("NoReturnPolicy.substitute", () -> NoReturnPolicy.substitute(1, wrong));
  }

  @Test
  void takesZeroAndVeryLongHolds() {
    assertDoesNotThrow(() -> NoReturnPolicy.substitute(0, 0));
    assertDoesNotThrow(
        () ->
            SignalChain.of(
                new SignalSettings(
                    GateSettings.OPEN, NoReturnPolicy.hold(Double.MAX_VALUE), 1, 1, 0)));
  }
}
