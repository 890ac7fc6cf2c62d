package io.strapline.level.reading;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ReadingTest {

  private static final Instant TIME = Instant.parse("2024-05-01T06:00:00Z");
  private static final Quality HELD = Quality.uncertain(Cause.NO_RETURN_HELD);
  private static final Quality LOST = Quality.bad(Cause.NO_RETURN);

  /** Whatever the quality: a value that is not finite slips past every comparison. */
  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void refusesAValueThatIsNotFiniteEvenWhenItIsBad(double value) {
    for (Quality quality : List.of(Quality.GOOD, HELD, LOST)) {
      assertRefused("Reading.value", () -> new Reading(value, quality, TIME));
    }
    assertRefused("Reading.value", () -> Reading.good(4, TIME).derived(value, Quality.GOOD));
  }

  @Test
  void givesNoUsableValueWhenItIsBad() {
    assertEquals(OptionalDouble.of(4), Reading.good(4, TIME).usable());
    assertEquals(OptionalDouble.of(4), new Reading(4, HELD, TIME).usable());
    assertTrue(new Reading(4, LOST, TIME).usable().isEmpty());
  }

  @Test
  void neverGetsBetterByDerivingFromIt() {
    for (Quality own : List.of(Quality.GOOD, HELD, LOST)) {
      for (Quality other : List.of(Quality.GOOD, HELD, LOST)) {
        Reading derived = new Reading(4, own, TIME).derived(8, other);

        assertEquals(new Reading(8, Quality.worst(own, other), TIME), derived);
      }
    }
  }

  @Test
  void equalsItselfWithTheOtherZero() {
    assertEquals(Reading.good(0.0, TIME), Reading.good(-0.0, TIME));
  }
}
