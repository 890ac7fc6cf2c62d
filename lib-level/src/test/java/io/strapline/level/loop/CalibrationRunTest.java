package io.strapline.level.loop;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.loop.CalibrationReading.Direction;
import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CalibrationRunTest {

  private static CalibrationReading up(double ideal, double reading) {
    return new CalibrationReading(1, Direction.UP, ideal, reading);
  }

  private static CalibrationReading of(CsvRow row) {
    return new CalibrationReading(
        (int) row.number("cycle"),
        Direction.valueOf(row.text("direction").toUpperCase(Locale.ROOT)),
        row.number("ideal_mA"),
        row.number("reading_mA"));
  }

  private static List<CsvRow> rows() {
    return CsvRows.read(CalibrationRunTest.class, "calibration_readings.csv");
  }

  private static CalibrationRun threeCycles() {
    return new CalibrationRun(
        CalibrationSpan.MILLIAMPS, rows().stream().map(CalibrationRunTest::of).toList());
  }

  private static double expected(String start) {
    return CsvRows.read(CalibrationRunTest.class, "calibration_results.csv").stream()
        .filter(row -> row.text("quantity").startsWith(start))
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("no row " + start))
        .number("percent_of_span");
  }

  // calibration_readings.csv prints the errors to 0.00001 %; in decimal they are exact.
  @Test
  void givesTheErrorsOfTheTableExactly() {
    CalibrationRun run = threeCycles();
    for (int i = 0; i < rows().size(); i++) {
      BigDecimal error = run.errorPercent(run.readings().get(i));
      CsvRow row = rows().get(i);
      assertEquals(
          0, new BigDecimal(row.text("error_percent_of_span")).compareTo(error), row::toString);
    }
    assertEquals(30, rows().size());
  }

  // calibration_results.csv: definitions of IEC 61298-2 practice, lines by a linear program.
  @Test
  void givesTheFiguresOfTheTable() {
    CalibrationFigures figures = threeCycles().figures();

    assertEquals(
        expected("maximum positive error"), figures.inaccuracy().greatestPositive(), 1e-12);
    assertEquals(
        expected("maximum negative error"), figures.inaccuracy().greatestNegative(), 1e-12);
    assertEquals(expected("largest average error"), figures.measuredError(), 1e-12);
    assertEquals(expected("hysteresis"), figures.hysteresis().orElseThrow(), 1e-12);
    assertEquals(expected("repeatability"), figures.repeatability().orElseThrow(), 1e-12);
    Conformity conformity = figures.conformity();
    assertEquals(expected("terminal-based"), conformity.terminalBased(), 1e-12);
    assertEquals(expected("zero-based"), conformity.zeroBased(), 1e-12);
    assertEquals(expected("independent"), conformity.independent(), 1e-12);
  }

  @Test
  void tellsNoHysteresisNorRepeatabilityOfOnePassUp() {
    CalibrationFigures figures =
        new CalibrationRun(
                CalibrationSpan.MILLIAMPS, List.of(up(4, 3.99), up(12, 11.9), up(20, 20)))
            .figures();

    assertTrue(figures.hysteresis().isEmpty());
    assertTrue(figures.repeatability().isEmpty());
    assertEquals(-0.625, figures.measuredError(), 1e-12);
    assertEquals(0, figures.inaccuracy().greatestPositive());
  }

  /** A constant offset shifts every error and changes neither spread nor shape. */
  @Test
  void shiftsWithAnOffsetAndKeepsTheRest() {
    long seed = 815;
    Random random = new Random(seed);
    for (int i = 0; i < 100; i++) {
      double offset = random.nextGaussian();
      List<CalibrationReading> shifted = new ArrayList<>();
      threeCycles()
          .readings()
          .forEach(
              one ->
                  shifted.add(
                      new CalibrationReading(
                          one.cycle(), one.direction(), one.ideal(), one.reading() + offset)));
      CalibrationFigures before = threeCycles().figures();
      CalibrationFigures after = new CalibrationRun(CalibrationSpan.MILLIAMPS, shifted).figures();
      String told = "seed " + seed + ", loop " + i;

      assertEquals(before.hysteresis().orElseThrow(), after.hysteresis().orElseThrow(), 1e-9, told);
      assertEquals(before.conformity().independent(), after.conformity().independent(), 1e-9, told);
      assertEquals(
          before.conformity().terminalBased(), after.conformity().terminalBased(), 1e-9, told);
    }
  }

  @Test
  void refusesAPointTwiceInOneCycleAndDirection() {
    assertRefused(
        "CalibrationRun.readings[1].ideal",
        () -> new CalibrationRun(CalibrationSpan.MILLIAMPS, List.of(up(4, 4), up(4, 4.01))));
  }

  @Test
  void refusesOnePointAndMoreThanAHundredAndOne() {
    List<CalibrationReading> many = new ArrayList<>();
    for (int i = 0; i <= CalibrationRun.MAX_POINTS; i++) {
      many.add(up(i, i));
    }
    CalibrationSpan span = CalibrationSpan.MILLIAMPS;

    assertRefused("CalibrationRun.points", () -> new CalibrationRun(span, List.of(up(4, 4))));
    assertRefused("CalibrationRun.points", () -> new CalibrationRun(span, many));
    assertEquals(101, new CalibrationRun(span, many.subList(0, 101)).readings().size());
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void refusesWhatIsNotFinite(double wrong) {
    assertRefused("CalibrationReading.ideal", () -> up(wrong, 4));
    assertRefused("CalibrationReading.reading", () -> up(4, wrong));
    assertRefused("CalibrationSpan.lower", () -> new CalibrationSpan(wrong, 20, "mA"));
    assertRefused("CalibrationSpan.upper", () -> new CalibrationSpan(4, wrong, "mA"));
  }

  @Test
  void refusesASpanOfNothingAndACycleZero() {
    assertRefused("CalibrationSpan.upper", () -> new CalibrationSpan(4, 4, "mA"));
    assertRefused("CalibrationReading.cycle", () -> new CalibrationReading(0, Direction.UP, 4, 4));
  }
}
