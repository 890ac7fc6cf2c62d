package io.strapline.level.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.table.CalibrationOutlier.Kind;
import io.strapline.level.testing.Refusals;
import io.strapline.level.vessel.CapacityCurve;
import io.strapline.level.vessel.LyingCylinder;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LiquidCalibrationTest {

  private static final CapacityCurve TANK = new LyingCylinder(3, 8);
  private static final double LEVEL = 0.001;
  private static final double INCREMENT = 0.002;
  private static final int COUNT = 27;

  private static CalibrationFacts facts(double factor) {
    return new CalibrationFacts(new MeterFacts(1, 0.0005, INCREMENT, 0, 0), LEVEL, 0.005, factor);
  }

  /** Fillings of 2 m3 from 1 m3 on, with errors of the stated spread times a size. */
  private static List<FillReading> readings(Random random, double size) {
    List<FillReading> readings = new ArrayList<>();
    double volume = 1;
    for (int i = 0; i < COUNT; i++) {
      double error = i == 0 ? 0 : size * INCREMENT * random.nextGaussian();
      volume += i == 0 ? 0 : 2;
      double level = TANK.heightMetres(volume) + size * LEVEL * random.nextGaussian();
      readings.add(new FillReading(i + 1, level, i == 0 ? 1 : 2 + error));
    }
    return readings;
  }

  private static LiquidCalibration calibration(List<FillReading> readings) {
    return LiquidCalibration.of("tank", readings, facts(4));
  }

  @Test
  void exactReadingsMakeTheTableOfTheVessel() {
    LiquidCalibration calibration = calibration(readings(new Random(1), 0));
    CapacityTable table = calibration.table(Interpolation.LINEAR);

    assertEquals(List.of(), calibration.outliers());
    for (CapacityRow row : table.rows()) {
      assertEquals(TANK.volumeCubicMetres(row.heightMetres()), row.volumeCubicMetres(), 1e-9);
    }
    assertEquals(53, table.capacityCubicMetres(), 1e-9);
  }

  @Test
  void namesAMisreadLevelAndNothingElseAndKeepsIt() {
    List<FillReading> readings = readings(new Random(2), 0.5);
    FillReading was = readings.get(12);
    readings.set(12, new FillReading(13, was.heightMetres() + 0.020, was.meteredCubicMetres()));

    LiquidCalibration calibration = calibration(readings);

    assertEquals(1, calibration.outliers().size(), calibration.outliers()::toString);
    CalibrationOutlier outlier = calibration.outliers().get(0);
    assertEquals(13, outlier.line());
    assertEquals(Kind.LEVEL_READING, outlier.kind());
    // 20 mm times the area of about 24 m2, read too high.
    assertEquals(-0.48, outlier.sizeCubicMetres(), 0.05);
    assertEquals(COUNT, calibration.rows().size());
    assertEquals(COUNT, calibration.table(Interpolation.LINEAR).size());
    assertTrue(outlier.text().startsWith("line 13: the level"), outlier.text());
  }

  @Test
  void namesAMismeteredIncrementAndNothingElse() {
    List<FillReading> readings = readings(new Random(3), 0.5);
    FillReading was = readings.get(9);
    readings.set(9, new FillReading(10, was.heightMetres(), was.meteredCubicMetres() - 0.4));

    List<CalibrationOutlier> outliers = calibration(readings).outliers();

    assertEquals(1, outliers.size(), outliers::toString);
    assertEquals(10, outliers.get(0).line());
    assertEquals(Kind.METERED_INCREMENT, outliers.get(0).kind());
    assertEquals(-0.4, outliers.get(0).sizeCubicMetres(), 0.1);
    assertTrue(outliers.get(0).text().contains("from here on"), outliers.get(0).text());
  }

  @Test
  void namesSeveralThatDoNotHideEachOther() {
    List<FillReading> readings = readings(new Random(4), 0.3);
    FillReading level = readings.get(7);
    readings.set(7, new FillReading(8, level.heightMetres() - 0.03, level.meteredCubicMetres()));
    FillReading metered = readings.get(18);
    readings.set(18, new FillReading(19, metered.heightMetres(), 2.6));

    List<CalibrationOutlier> outliers = calibration(readings).outliers();

    assertEquals(
        List.of(8, 19),
        outliers.stream().map(CalibrationOutlier::line).toList(),
        outliers::toString);
    assertEquals(Kind.LEVEL_READING, outliers.get(0).kind());
    assertEquals(Kind.METERED_INCREMENT, outliers.get(1).kind());
  }

  /** Sound readings are named about once in 16,000 tests; here are some 10,000. */
  @Test
  void hardlyEverNamesASoundReading() {
    int named = 0;
    for (long seed = 0; seed < 200; seed++) {
      named += calibration(readings(new Random(seed), 1)).outliers().size();
    }
    assertTrue(named <= 6, named + " named");
  }

  /**
   * Over many fillings a residual's spread must be the stated one, and a volume's too. Their
   * standard error over n fillings is 1 / root(2 n) of them; five are allowed.
   */
  @Test
  void uncertaintiesHaveTheSpreadOfManyFillings() {
    int fillings = 2_000;
    int at = 13;
    double squares = 0;
    double residuals = 0;
    double standard = 0;
    for (long seed = 0; seed < fillings; seed++) {
      Random random = new Random(seed);
      List<FillReading> readings = readings(random, 1);
      double factor = 1 + 0.0005 * random.nextGaussian();
      double heel = 1 + 0.005 * random.nextGaussian();
      CalibrationRow row = LiquidCalibration.of("tank", readings, facts(10)).rows().get(at);
      double truth = TANK.volumeCubicMetres(row.heightMetres());
      double found = heel + (row.volumeCubicMetres() - 1) * factor;
      squares += (found - truth) * (found - truth) / fillings;
      double residual = row.residualCubicMetres().orElseThrow();
      residuals += residual * residual / fillings;
      standard = row.standardCubicMetres();
    }
    double allowed = 5 / Math.sqrt(2.0 * fillings);
    assertEquals(standard, Math.sqrt(squares), allowed * standard);
    // Level: area 24 m2 x 1 mm x root(1 + 34/36); increments: root of squares of 1/6, 1/2, 1/2,
    // 1/6.
    double area = 2 * Math.sqrt(1.5 * 1.5 - 0.0) * 8;
    double byLevel = area * LEVEL * Math.sqrt(1 + 34 / 36.0);
    double byMeter = INCREMENT * Math.sqrt(2 * (1 / 36.0 + 1 / 4.0));
    double expected = Math.hypot(byLevel, byMeter);
    assertEquals(expected, Math.sqrt(residuals), (allowed + 0.02) * expected);
  }

  @Test
  void theEndReadingsHaveNoResidual() {
    List<CalibrationRow> rows = calibration(readings(new Random(5), 1)).rows();

    assertTrue(rows.get(0).residualCubicMetres().isEmpty());
    assertTrue(rows.get(COUNT - 1).residualCubicMetres().isEmpty());
    assertTrue(rows.get(1).residualCubicMetres().isPresent());
    assertTrue(rows.get(COUNT - 2).residualCubicMetres().isPresent());
  }

  /** By hand: 10 m3 indicated x 1.002 x (1 + 0.0002 x 5). */
  @Test
  void correctsForMeterFactorAndTemperature() {
    MeterFacts meter = new MeterFacts(1.002, 0, 0, 0.0002, 5);

    assertEquals(10.03002, meter.trueCubicMetres(10), 1e-12);
  }

  @Test
  void droppingALevelKeepsWhatWasMetered() {
    LiquidCalibration all = calibration(readings(new Random(6), 1));
    LiquidCalibration fewer = all.without(Set.of(5, 6));

    assertEquals(COUNT - 2, fewer.rows().size());
    assertEquals(
        all.rows().get(COUNT - 1).volumeCubicMetres(),
        fewer.rows().get(COUNT - 3).volumeCubicMetres(),
        1e-12);
    assertEquals(
        all.rows().get(6).volumeCubicMetres(), fewer.rows().get(4).volumeCubicMetres(), 1e-12);
  }

  @Test
  void refusesToDropTheEndsOrUnknownLines() {
    LiquidCalibration all = calibration(readings(new Random(6), 1));
    for (int line : new int[] {1, COUNT, 0, 999}) {
      Refusals.assertRefused("LiquidCalibration.without", () -> all.without(Set.of(line)));
    }
  }

  @Test
  void namesEveryReadingThatCannotBe() {
    List<FillReading> readings =
        List.of(
            new FillReading(3, 0, 0),
            new FillReading(4, Double.NaN, 1),
            new FillReading(5, 0.5, -1),
            new FillReading(6, 0.5, 1),
            new FillReading(7, 0.4, Double.POSITIVE_INFINITY));

    CapacityTableException refused =
        assertThrows(CapacityTableException.class, () -> calibration(readings));

    assertEquals(
        List.of(4, 5, 6, 7, 7), refused.problems().stream().map(TableProblem::line).toList());
  }

  @Test
  void refusesFewerThanFourReadings() {
    List<FillReading> three = readings(new Random(7), 1).subList(0, 3);
    CapacityTableException refused =
        assertThrows(CapacityTableException.class, () -> calibration(three));
    assertTrue(refused.problems().get(0).rule().contains("four"));
    assertThrows(CapacityTableException.class, () -> calibration(List.of()));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -101})
  void refusesFactsThatCannotBe(double bad) {
    Refusals.assertRefused("MeterFacts.factor", () -> new MeterFacts(bad, 0, 0, 0, 0));
    Refusals.assertRefused("MeterFacts.factorStandard", () -> new MeterFacts(1, bad, 0, 0, 0));
    Refusals.assertRefused("MeterFacts.incrementStandard", () -> new MeterFacts(1, 0, bad, 0, 0));
    Refusals.assertRefused("MeterFacts.expansion", () -> new MeterFacts(1, 0, 0, bad, 0));
    Refusals.assertRefused("MeterFacts.vesselMinusMeter", () -> new MeterFacts(1, 0, 0, 0, bad));
    MeterFacts meter = new MeterFacts(1, 0, 0, 0, 0);
    Refusals.assertRefused(
        "CalibrationFacts.levelStandard", () -> new CalibrationFacts(meter, bad, 0, 4));
    Refusals.assertRefused(
        "CalibrationFacts.heelStandard", () -> new CalibrationFacts(meter, 1, bad, 4));
    Refusals.assertRefused(
        "CalibrationFacts.outlierFactor", () -> new CalibrationFacts(meter, 1, 0, bad));
  }

  @Test
  void acceptsTheLimitsOfTheFacts() {
    assertEquals(0.5, new MeterFacts(0.5, 1, 0, -0.01, -100).factor());
    assertEquals(2, new MeterFacts(2, 0, 0, 0.01, 100).factor());
    Refusals.assertRefused("MeterFacts.factor", () -> new MeterFacts(0.49, 0, 0, 0, 0));
    Refusals.assertRefused("MeterFacts.factor", () -> new MeterFacts(2.01, 0, 0, 0, 0));
    Refusals.assertRefused(
        "CalibrationFacts.levelStandard",
        () -> new CalibrationFacts(new MeterFacts(1, 0, 0, 0, 0), 0, 0, 4));
  }
}
