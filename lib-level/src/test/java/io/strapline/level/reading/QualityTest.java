package io.strapline.level.reading;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.reading.Quality.Level;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class QualityTest {

  private static final Quality UNDER = Quality.uncertain(Cause.LOOP_UNDER_RANGE);
  private static final Quality HELD = Quality.uncertain(Cause.NO_RETURN_HELD);
  private static final Quality FAULT = Quality.bad(Cause.LOOP_FAULT_LOW);
  private static final Quality SILENT = Quality.bad(Cause.SOURCE_SILENT);

  @ParameterizedTest
  @EnumSource(Cause.class)
  void isGoodWithoutACauseAndNeverWithOne(Cause cause) {
    if (cause == Cause.NONE) {
      assertRefused("Quality.cause", () -> Quality.uncertain(cause));
      assertRefused("Quality.cause", () -> Quality.bad(cause));
      assertTrue(new Quality(Level.GOOD, cause).isGood());
    } else {
      assertRefused("Quality.cause", () -> new Quality(Level.GOOD, cause));
    }
  }

  @Test
  void combinesToTheWorse() {
    List<Quality> bestFirst = List.of(Quality.GOOD, UNDER, FAULT);
    for (int a = 0; a < bestFirst.size(); a++) {
      for (int b = 0; b < bestFirst.size(); b++) {
        Quality worse = bestFirst.get(Math.max(a, b));
        assertEquals(worse, Quality.worst(bestFirst.get(a), bestFirst.get(b)));
      }
    }
  }

  /** The stage that saw the trouble first knows most about it. */
  @Test
  void keepsTheCauseOfTheEarlierStageOnATie() {
    assertSame(UNDER, Quality.worst(UNDER, HELD));
    assertSame(HELD, Quality.worst(HELD, UNDER));
    assertSame(FAULT, Quality.worst(FAULT, SILENT));
    assertSame(SILENT, Quality.worst(SILENT, FAULT));
  }

  @Test
  void isNeitherGoodNorBadWhenUncertain() {
    assertEquals(List.of(false, false), List.of(UNDER.isGood(), UNDER.isBad()));
    assertEquals(List.of(false, true), List.of(FAULT.isGood(), FAULT.isBad()));
  }
}
