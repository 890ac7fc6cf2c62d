package io.strapline.level.inventory;

import static io.strapline.level.inventory.Series.bad;
import static io.strapline.level.inventory.Series.good;
import static io.strapline.level.inventory.Series.held;
import static io.strapline.level.inventory.Series.uncertain;
import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.inventory.TotalsState.Turning;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TotalsTest {

  private static final double AREA = 20;
  private static final Content VOLUME = Content.volume(Vessels.upright(AREA, 50));

  private final Totals totals = Totals.of(0.01, VOLUME);

  private void levels(double... metres) {
    for (int i = 0; i < metres.length; i++) {
      totals.add(good(i, metres[i]));
    }
  }

  private void assertTotals(double filled, double drawn) {
    assertEquals(filled, totals.state().filledAmount(), 1e-9);
    assertEquals(drawn, totals.state().drawnAmount(), 1e-9);
  }

  @Test
  void countsFillsAndDrawsApart() {
    levels(2, 3, 5, 4, 4.5, 1);
    assertTotals(20 * (3 + 0.5), 20 * (1 + 3.5));
  }

  @Test
  void theFirstSampleOnlySetsTheStart() {
    levels(7);
    assertTotals(0, 0);
    assertEquals(FlowDirection.STILL, totals.state().turning().orElseThrow().direction());
  }

  @Test
  void aSlowDriftCountsInFullOnceItHasGoneTheThreshold() {
    for (int i = 0; i <= 99; i++) {
      totals.add(good(i, 2 + 0.0001 * i));
      assertTotals(0, 0);
    }
    totals.add(good(100, 2.01));
    assertTotals(20 * 0.01, 0);
    totals.add(good(101, 2.0101));
    assertTotals(20 * 0.0101, 0);
  }

  // Half a year of noise below the threshold at one sample a minute; a plain sum of rises would
  // creep by a third of the peak-to-peak per sample.
  @Test
  void noiseBelowTheThresholdDoesNotCreep() {
    long seed = 5;
    Random random = new Random(seed);
    double creeping = 0;
    double last = 4;
    for (int i = 0; i < 262_800; i++) {
      double level = 4 + 0.004 * (2 * random.nextDouble() - 1);
      creeping += AREA * Math.max(0, level - last);
      last = level;
      totals.add(good(60.0 * i, level));
    }
    assertTotals(0, 0);
    assertTrue(creeping > 1000, "the noise would not have crept: " + creeping);
  }

  // After a fill the highest noise peak is added once and no more.
  @Test
  void noiseAfterAFillAddsAtMostItsOwnPeak() {
    long seed = 6;
    Random random = new Random(seed);
    totals.add(good(-1, 1));
    for (int i = 0; i < 100_000; i++) {
      totals.add(good(i, 4 + 0.004 * (2 * random.nextDouble() - 1)));
    }
    double over = totals.state().filledAmount() - AREA * 3;
    assertTrue(over >= 0 && over <= AREA * 0.004, "seed " + seed + " over " + over);
    assertEquals(0, totals.state().drawnAmount());
  }

  // A rest of 100 samples at either end: the turning points move to the noise's peaks, so the bias
  // shows its sign, and it stays below the peak-to-peak for each cycle.
  @Test
  void theBiasOfNoiseStaysWithinItsStatedBound() {
    long seed = 7;
    Random random = new Random(seed);
    double noise = 0.003;
    int cycles = 50;
    int t = 0;
    for (int i = 0; i < 600 * cycles; i++) {
      double phase = i % 600;
      double trapezium = Math.max(0, Math.min(2, Math.min(phase - 100, 600 - phase) / 100));
      totals.add(good(t++, 2 + trapezium + noise * (2 * random.nextDouble() - 1)));
    }
    // The last sample lies a hundredth of a metre above the low that it goes to.
    double filled = totals.state().filledAmount() - AREA * 2 * cycles;
    double drawn = totals.state().drawnAmount() + AREA * 0.01 - AREA * 2 * cycles;
    double bound = AREA * 2 * noise * cycles;
    String where = "seed " + seed + " filled " + filled + " drawn " + drawn;
    assertTrue(filled > 0.8 * bound && filled <= bound, where);
    assertTrue(drawn > 0.8 * bound && drawn <= bound + AREA * noise, where);
  }

  @Test
  void filledLessDrawnIsTheChangeOfTheContent() {
    long seed = 8;
    Random random = new Random(seed);
    double level = 25;
    totals.add(good(0, level));
    for (int i = 1; i < 10_000; i++) {
      level = Math.max(0, Math.min(50, level + random.nextGaussian() * 0.02));
      TotalsState state = totals.add(good(i, level));
      double turning = state.turning().orElseThrow().heightMetres();
      assertEquals(
          AREA * (turning - 25),
          state.filledAmount() - state.drawnAmount(),
          1e-8,
          "seed " + seed + " sample " + i);
      assertTrue(Math.abs(turning - level) < 0.01, "seed " + seed + " sample " + i);
    }
  }

  // A single-precision total stops at 16 777 216 and steps by 2 near 30 million.
  @Test
  void smallAmountsCountOnALargeTotal() {
    assertEquals(16_777_216f, 16_777_216f + 1f);
    CompensatedSum sum = new CompensatedSum(30e6, 0);
    for (int i = 0; i < 3_000_000; i++) {
      sum = sum.plus(1.666667);
    }
    assertEquals(30e6 + 5_000_001, sum.value(), 1e-8);
  }

  @Test
  void aTotalOf30MillionGoesOnCountingBatchesOfALitreOrTwo() {
    TotalsState large =
        new TotalsState(new CompensatedSum(30e6, 0), CompensatedSum.ZERO, Optional.empty(), false);
    Totals litres = Totals.restore(0.01, height -> height, large);
    for (int i = 0; i < 200_000; i++) {
      litres.add(good(i, i % 2 == 0 ? 5 : 6.666667));
    }
    assertEquals(30e6 + 166_666.7, litres.state().filledAmount(), 1e-6);
    assertEquals(99_999 * 1.666667, litres.state().drawnAmount(), 1e-6);
  }

  // 1e16 + 1 is 1e16 in double precision too.
  @Test
  void keepsWhatRoundingTakes() {
    assertEquals(1e16, 1e16 + 1);
    CompensatedSum sum = new CompensatedSum(1e16, 0);
    for (int i = 0; i < 1000; i++) {
      sum = sum.plus(1);
    }
    assertEquals(1000, sum.plus(-1e16).value());
  }

  @Test
  void goesOnAfterAKillAsIfNothingHadBeen() {
    long seed = 11;
    Random random = new Random(seed);
    Totals killed = Totals.of(0.01, VOLUME);
    double level = 25;
    for (int i = 0; i < 2000; i++) {
      level = Math.max(0, Math.min(50, level + random.nextGaussian() * 0.02));
      TotalsState expected = totals.add(good(i, level));
      killed = Totals.restore(0.01, VOLUME, killed.state());
      assertEquals(expected, killed.add(good(i, level)), "seed " + seed + " sample " + i);
    }
  }

  @Test
  void whatMovedWhileDownCountsNet() {
    levels(2, 5);
    Totals restored = Totals.restore(0.01, VOLUME, totals.state());
    TotalsState after = restored.add(good(100_000, 1));
    assertEquals(20 * 3, after.filledAmount(), 1e-9);
    assertEquals(20 * 4, after.drawnAmount(), 1e-9);
  }

  @Test
  void clearingKeepsTheTurningPoint() {
    levels(2, 5);
    TotalsState before = totals.clear();
    assertEquals(60, before.filledAmount(), 1e-9);
    assertTotals(0, 0);
    totals.add(good(10, 6));
    assertTotals(20, 0);
  }

  @Test
  void badAndHeldSamplesAreLeftOutAndUncertainOnesMark() {
    levels(2, 3);
    totals.add(bad(10));
    totals.add(held(11, 40));
    assertTotals(20, 0);
    assertFalse(totals.state().doubtful());
    totals.add(uncertain(12, 4));
    assertTotals(40, 0);
    assertTrue(totals.state().doubtful());
    totals.clear();
    assertFalse(totals.state().doubtful());
  }

  @Test
  void latecomersAreIgnoredAndAClockThatWasSetIsNot() {
    levels(2, 3);
    totals.add(good(1 - 60, 40));
    assertTotals(20, 0);
    totals.add(good(1 - 60.001, 4));
    assertTotals(40, 0);
    totals.add(good(-50, 5));
    assertTotals(60, 0);
  }

  @Test
  void levelsOutsideTheVesselCountAsItsEnds() {
    levels(49, 52, 55, 49);
    assertTotals(20, 20);
  }

  @Test
  void massTotalsAreInKilograms() {
    Content mass =
        Content.mass(MassCurve.of(Vessels.upright(AREA, 50), BulkDensity.constant(1600)));
    Totals kilograms = Totals.of(0.01, mass);
    kilograms.add(good(0, 2));
    assertEquals(32_000, kilograms.add(good(1, 3)).filledAmount(), 1e-6);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1, 0})
  void refusesThresholds(double wrong) {
    assertRefused("Totals.threshold", () -> Totals.of(wrong, VOLUME));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void refusesSavedNumbersThatAreNone(double wrong) {
    assertRefused("CompensatedSum.sum", () -> new CompensatedSum(wrong, 0));
    assertRefused("CompensatedSum.rest", () -> new CompensatedSum(0, wrong));
    assertRefused("CompensatedSum.sum", () -> CompensatedSum.ZERO.plus(wrong));
    assertRefused(
        "TotalsState.height", () -> new Turning(FlowDirection.STILL, wrong, Series.START));
  }

  @Test
  void refusesASavedTotalBelowZero() {
    CompensatedSum negative = new CompensatedSum(-1, 0);
    assertRefused(
        "TotalsState.filled",
        () -> new TotalsState(negative, CompensatedSum.ZERO, Optional.empty(), false));
    assertRefused(
        "TotalsState.drawn",
        () -> new TotalsState(CompensatedSum.ZERO, negative, Optional.empty(), false));
    assertNotEquals(TotalsState.NONE, totals.add(good(0, 1)));
  }
}
