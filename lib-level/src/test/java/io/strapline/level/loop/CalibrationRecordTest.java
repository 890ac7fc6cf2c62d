package io.strapline.level.loop;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.loop.CalibrationReading.Direction;
import io.strapline.level.loop.CalibrationRecord.Row;
import io.strapline.level.loop.CalibrationRecord.Verdict;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CalibrationRecordTest {

  private static final double[] IDEAL = {4, 8, 12, 16, 20};

  private static CalibrationRun run(double... readings) {
    List<CalibrationReading> all = new ArrayList<>();
    for (int i = 0; i < readings.length; i++) {
      all.add(new CalibrationReading(1, Direction.UP, IDEAL[i], readings[i]));
    }
    return new CalibrationRun(CalibrationSpan.MILLIAMPS, all);
  }

  /** Pains K3. */
  private static CalibrationRun field() {
    return run(4.02, 8.01, 12.00, 15.97, 19.95);
  }

  private static CalibrationRun perfect() {
    return run(4, 8, 12, 16, 20);
  }

  private static CalibrationRecord record(
      CalibrationRun found, Optional<CalibrationRun> adjusted, double percent) {
    return new CalibrationRecord("LT-101", found, adjusted, new CalibrationTolerance(percent, 2));
  }

  // Pains K3: 0.5 % of 16 mA is 0.08 mA; errors of +0.125, +0.0625, 0, -0.1875, -0.3125 % of span.
  @Test
  void tellsThePercentOfSpanAndNotOfReadingOfTheFieldCase() {
    CalibrationRecord record = record(field(), Optional.empty(), 0.5);
    List<BigDecimal> errors =
        field().readings().stream()
            .map(field()::errorPercent)
            .map(BigDecimal::stripTrailingZeros)
            .toList();
    List<BigDecimal> rounded = record.rows(field()).stream().map(Row::errorPercent).toList();

    assertEquals(0.08, record.tolerance().inUnitOf(CalibrationSpan.MILLIAMPS), 1e-15);
    assertEquals(
        List.of("0.125", "0.0625", "0", "-0.1875", "-0.3125"),
        errors.stream().map(BigDecimal::toPlainString).toList());
    assertEquals(
        List.of("0.13", "0.06", "0.00", "-0.19", "-0.31"),
        rounded.stream().map(BigDecimal::toPlainString).toList());
    assertEquals(Verdict.PASSED, record.verdict());
    assertEquals(Verdict.FAILED_AS_LEFT, record(field(), Optional.empty(), 0.3).verdict());
  }

  // The edge lies at 0.254 999... % with two places: 4 mA + 0.0408 is 0.255 %, rounded 0.26 %.
  @ParameterizedTest
  @CsvSource({
    "4.04, true",
    "4.0407, true",
    "4.0408, false",
    "3.96, true",
    "3.9593, true",
    "3.9592, false"
  })
  void roundsHalfAwayFromZeroBeforeComparing(double reading, boolean passes) {
    CalibrationRecord record = record(run(reading, 8, 12, 16, 20), Optional.empty(), 0.25);

    assertEquals(passes, record.rows(record.asFound()).get(0).passes());
  }

  @Test
  void countsAdjustmentAndWhatWasFoundBefore() {
    Optional<CalibrationRun> good = Optional.of(perfect());

    assertEquals(Verdict.PASSED_AND_ADJUSTED, record(field(), good, 0.5).verdict());
    assertEquals(Verdict.FAILED_AS_FOUND_CORRECTED, record(field(), good, 0.25).verdict());
    assertEquals(Verdict.FAILED_AS_LEFT, record(perfect(), Optional.of(field()), 0.25).verdict());
  }

  @Test
  void isLeftAsFoundWhenNothingWasAdjusted() {
    CalibrationRun found = field();

    assertSame(found, record(found, Optional.empty(), 0.5).asLeft());
  }

  /** One reading out of tolerance is enough, on either side of zero. */
  @Test
  void failsByOneReading() {
    assertEquals(
        Verdict.FAILED_AS_LEFT, record(run(4, 8, 12, 16, 19.9), Optional.empty(), 0.5).verdict());
    assertEquals(
        Verdict.FAILED_AS_LEFT, record(run(4, 8.1, 12, 16, 20), Optional.empty(), 0.5).verdict());
    assertEquals(
        Verdict.PASSED, record(run(4, 8.08, 12, 16, 19.92), Optional.empty(), 0.5).verdict());
  }

  @Test
  void refusesAnotherSpanAfterAdjustment() {
    CalibrationRun volts =
        new CalibrationRun(
            new CalibrationSpan(1, 5, "V"),
            List.of(
                new CalibrationReading(1, Direction.UP, 1, 1),
                new CalibrationReading(1, Direction.UP, 5, 5)));

    assertRefused(
        "CalibrationRecord.adjusted.span", () -> record(field(), Optional.of(volts), 0.5));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, 0, -0.1})
  void refusesAToleranceThatIsNone(double wrong) {
    assertRefused("CalibrationTolerance.percentOfSpan", () -> new CalibrationTolerance(wrong, 2));
  }

  @Test
  void refusesFewerPlacesThanTheToleranceHas() {
    assertRefused("CalibrationTolerance.decimals", () -> new CalibrationTolerance(0.25, 1));
    assertRefused("CalibrationTolerance.decimals", () -> new CalibrationTolerance(0.25, -1));
    assertRefused("CalibrationTolerance.decimals", () -> new CalibrationTolerance(0.25, 7));
    assertTrue(new CalibrationTolerance(1, 0).passes(new BigDecimal("1.49")));
    assertFalse(new CalibrationTolerance(1, 0).passes(new BigDecimal("-1.5")));
  }
}
