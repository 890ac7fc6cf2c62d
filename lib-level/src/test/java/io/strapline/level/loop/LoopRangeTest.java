package io.strapline.level.loop;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.strapline.level.loop.LoopRange.Measure;
import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class LoopRangeTest {

  static List<CsvRow> currents() {
    return CsvRows.read(LoopRangeTest.class, "ne43.csv");
  }

  // Columns printed to 1e-4 % and 1e-5 m.
  @ParameterizedTest
  @MethodSource("currents")
  void scalesEveryCurrentOfTheBandTableOnARisingAndAFallingRange(CsvRow row) {
    double current = row.number("current_mA");
    LoopRange rising = LoopRange.ofLevel(0, 10);
    LoopRange falling = LoopRange.ofDistance(10, 0);

    assertEquals(row.number("percent_of_span"), LoopRange.percentOfCurrent(current), 5e-5);
    assertEquals(row.number("value_0_to_10_m"), rising.valueMetres(current), 5e-6);
    assertEquals(row.number("value_10_to_0_m"), falling.valueMetres(current), 5e-6);
    assertEquals(current, falling.currentMilliamps(falling.valueMetres(current)), 1e-12);
    assertEquals(
        row.number("percent_of_span"), falling.percent(falling.valueMetres(current)), 5e-5);
  }

  @Test
  void isExactAtBothEndsOfAnyRange() {
    long seed = 4020;
    Random random = new Random(seed);
    for (int i = 0; i < 1000; i++) {
      LoopRange range = LoopRange.ofLevel(random.nextGaussian() * 10, random.nextGaussian() * 10);
      String where = "seed " + seed + " " + range;
      assertEquals(range.lowerMetres(), range.valueMetres(4), where);
      assertEquals(range.upperMetres(), range.valueMetres(20), where);
      assertEquals(4, range.currentMilliamps(range.lowerMetres()), where);
      assertEquals(20, range.currentMilliamps(range.upperMetres()), where);
    }
  }

  // Integer scaling gave other results for 0-20 to 0-4 than for 20-0 to 4-0 and 0-20 to 4-0.
  @Test
  void mirrorsAReversedRange() {
    LoopRange forward = LoopRange.ofLevel(0, 4);
    LoopRange reversed = LoopRange.ofLevel(4, 0);
    for (int i = 0; i <= 240; i++) {
      double current = i / 10.0;
      assertEquals(
          4 - forward.valueMetres(current), reversed.valueMetres(current), 1e-14, "mA " + current);
      assertEquals(forward.valueMetres(current), reversed.valueMetres(24 - current), 1e-14);
    }
  }

  // A 0-5 m probe mounted 0.2 m above the floor at 12 mA: 2.7 m.
  @Test
  void carriesAnOffsetInItsEnds() {
    assertEquals(2.7, LoopRange.ofLevel(0.2, 5.2).valueMetres(12), 1e-12);
  }

  // 2-10 V = 0-2500 mm; 0 V is -625 mm, not -500.
  @Test
  void goesOnBelowTheLiveZero() {
    double current = RawCounts.ofVoltsAcross(500).currentMilliamps(0);

    assertEquals(-0.625, LoopRange.ofLevel(0, 2.5).valueMetres(current), 1e-12);
  }

  // 4 mA = 200 and 20 mA = 10000: a true zero would need 3.673 mA, in the gap below the range.
  @Test
  void tellsTheCurrentThatAValueOutsideTheRangeWouldNeed() {
    double current = LoopRange.ofLevel(200, 10000).currentMilliamps(0);

    assertEquals(3.673, current, 5e-4);
    assertEquals(LoopBand.GAP_LOW, LoopLimits.NE43.classify(current));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void refusesEndsThatAreNotFinite(double wrong) {
    assertRefused("LoopRange.lower", () -> LoopRange.ofLevel(wrong, 1));
    assertRefused("LoopRange.upper", () -> LoopRange.ofLevel(1, wrong));
  }

  @Test
  void refusesEqualEndsOfEitherSign() {
    assertRefused("LoopRange.upper", () -> LoopRange.ofDistance(3, 3));
    assertRefused("LoopRange.upper", () -> new LoopRange(Measure.LEVEL, 0.0, -0.0));
  }
}
