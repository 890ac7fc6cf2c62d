package io.strapline.level.alarm;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class AlarmHandlingTest {

  @ParameterizedTest
  @ValueSource(ints = {Integer.MIN_VALUE, -1, 0, 5, Integer.MAX_VALUE})
  void refusesAPriorityOutsideOneToFour(int priority) {
    assertRefused("AlarmHandling.priority", () -> new AlarmHandling(priority, false));
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4})
  void takesFourPriorities(int priority) {
    assertDoesNotThrow(() -> new AlarmHandling(priority, true));
  }
}
