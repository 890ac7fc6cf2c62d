package io.strapline.level.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class GatesTest {

  private static final OptionalDouble STRONG = OptionalDouble.of(40);

  private final Gates gates = Gates.of(new GateSettings(0.5, 30, OptionalDouble.of(12), List.of()));

  /** Both limits themselves are measurements; one step beyond is not. */
  @ParameterizedTest
  @CsvSource({
    "0.5, NONE",
    "0.49999999999999994, DEAD_ZONE",
    "0, DEAD_ZONE",
    "-3, DEAD_ZONE",
    "30, NONE",
    "30.000000000000004, FAR_LIMIT",
    "1e300, FAR_LIMIT",
    "NaN, NOT_A_NUMBER",
    "Infinity, NOT_A_NUMBER",
    "-Infinity, NOT_A_NUMBER"
  })
  void judgesTheDistanceUpToAndIncludingBothLimits(double distance, Cause cause) {
    assertEquals(cause, gates.judge(distance, STRONG).cause());
  }

  @ParameterizedTest
  @CsvSource({
    "12, NONE",
    "11.999999999999998, WEAK_RETURN",
    "-5, WEAK_RETURN",
    "1e9, NONE",
    "NaN, WEAK_RETURN",
    "Infinity, WEAK_RETURN",
    "-Infinity, WEAK_RETURN"
  })
  void judgesTheStrengthFromTheLeastUpwards(double strength, Cause cause) {
    assertEquals(cause, gates.judge(4, OptionalDouble.of(strength)).cause());
  }

  @Test
  void takesAMissingStrengthForTooWeakWhileALeastStrengthIsSet() {
    assertEquals(Cause.WEAK_RETURN, gates.judge(4, OptionalDouble.empty()).cause());
  }

  @Test
  void namesTheFirstGateThatRefuses() {
    OptionalDouble weak = OptionalDouble.of(1);

    assertEquals(Cause.NOT_A_NUMBER, gates.judge(Double.NaN, weak).cause());
    assertEquals(Cause.DEAD_ZONE, gates.judge(0.1, weak).cause());
    assertEquals(Cause.FAR_LIMIT, gates.judge(31, weak).cause());
    assertEquals(Cause.WEAK_RETURN, gates.judge(4, weak).cause());
  }

  @ParameterizedTest
  @ValueSource(doubles = {-3, 0, 1e300})
  void letsEveryFiniteDistancePassWhenOpen(double distance) {
    Gates open = Gates.of(GateSettings.OPEN);

    assertEquals(Quality.GOOD, open.judge(distance, OptionalDouble.empty()));
    assertEquals(Quality.GOOD, open.judge(distance, OptionalDouble.of(Double.NaN)));
    assertEquals(Cause.NOT_A_NUMBER, open.judge(Double.NaN, OptionalDouble.empty()).cause());
  }

  @Test
  void keepsTheCauseOfAReadingThatComesInBad() {
    Quality fault = Quality.bad(Cause.LOOP_FAULT_LOW);

    assertEquals(fault, gates.judge(new Reading(0.1, fault, Instant.EPOCH), STRONG));
  }

  @Test
  void judgesTheValueOfAnUncertainReadingLikeAnyOther() {
    Quality under = Quality.uncertain(Cause.LOOP_UNDER_RANGE);

    assertEquals(Quality.GOOD, gates.judge(new Reading(4, under, Instant.EPOCH), STRONG));
    assertEquals(
        Cause.FAR_LIMIT, gates.judge(new Reading(31, under, Instant.EPOCH), STRONG).cause());
  }
}
