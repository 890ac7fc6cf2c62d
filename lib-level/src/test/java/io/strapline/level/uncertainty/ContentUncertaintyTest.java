package io.strapline.level.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.table.CapacityTable;
import io.strapline.level.testing.Refusals;
import io.strapline.level.uncertainty.MeasuredContent.Beam;
import io.strapline.level.vessel.CapacityCurve;
import io.strapline.level.vessel.LyingCylinder;
import io.strapline.level.vessel.Sphere;
import io.strapline.level.vessel.StackedVessel;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The law of propagation against the propagation of distributions (JCGM 101:2008): the model is
 * written down here a second time, without any derivative, and run with random errors.
 */
class ContentUncertaintyTest {

  private static final int TRIALS = 200_000;

  private static final double DENSITY = 1_350;
  private static final double PER_KELVIN = -0.8;

  private static final List<UncertaintySource> SOURCES =
      List.of(
          UncertaintySource.rectangular("transmitter", Influence.DISTANCE, 0.010),
          LoopSources.current("loop", 0.1, 20),
          LoopSources.converter("card", 1_000, 20),
          UncertaintySource.certified("mounting", Influence.REFERENCE_HEIGHT, 0.010, 2),
          UncertaintySource.limited("tilt", Influence.TILT, Distribution.TRIANGULAR, 1),
          UncertaintySource.limited("waves", Influence.SURFACE, Distribution.U_SHAPED, 0.015),
          UncertaintySource.certified("table offset", Influence.VOLUME, 0.2, 2),
          UncertaintySource.certified("table scale", Influence.VOLUME_PART, 0.002, 2),
          UncertaintySource.rectangular("density", Influence.DENSITY, 10),
          UncertaintySource.rectangular("temperature", Influence.TEMPERATURE, 2));

  private static CapacityCurve upright() {
    return StackedVessel.uprightCylinder(6, 16);
  }

  private static MeasuredContent content(CapacityCurve curve, double distance, double tilt) {
    return new MeasuredContent(new Beam(distance, tilt, 17), curve, DENSITY, PER_KELVIN);
  }

  private static ContentUncertainty uncertainty(MeasuredContent content) {
    return ContentUncertainty.of(content, SOURCES, 2);
  }

  /** The errors of one trial, added up by what they act on. */
  private static final class Errors {
    private final Map<Influence, Double> sums = new EnumMap<>(Influence.class);

    double get(Influence influence) {
      return sums.getOrDefault(influence, 0.0);
    }

    void add(Influence influence, double error) {
      sums.merge(influence, error, Double::sum);
    }
  }

  /** Level, volume and mass of one trial. */
  private static double[] trial(
      MeasuredContent content, DoubleUnaryOperator volume, Errors errors) {
    double distance = content.beam().distanceMetres() + errors.get(Influence.DISTANCE);
    double tilt = Math.toRadians(content.beam().tiltDegrees() + errors.get(Influence.TILT));
    double height = content.beam().referenceHeightMetres() + errors.get(Influence.REFERENCE_HEIGHT);
    double level = height - distance * Math.cos(tilt) + errors.get(Influence.SURFACE);
    double cubicMetres =
        volume.applyAsDouble(level) * (1 + errors.get(Influence.VOLUME_PART))
            + errors.get(Influence.VOLUME);
    double density =
        DENSITY + errors.get(Influence.DENSITY) + PER_KELVIN * errors.get(Influence.TEMPERATURE);
    return new double[] {level, cubicMetres, density * cubicMetres};
  }

  private static double[][] trials(MeasuredContent content, DoubleUnaryOperator volume, long seed) {
    Random random = new Random(seed);
    double[][] results = new double[3][TRIALS];
    for (int i = 0; i < TRIALS; i++) {
      Errors errors = new Errors();
      for (UncertaintySource source : SOURCES) {
        double error = source.standard().value() * Draws.standard(source.distribution(), random);
        errors.add(source.influence(), error);
      }
      double[] result = trial(content, volume, errors);
      for (int q = 0; q < 3; q++) {
        results[q][i] = result[q];
      }
    }
    return results;
  }

  private static double mean(double[] values) {
    return Arrays.stream(values).sum() / values.length;
  }

  private static double moment(double[] values, int power) {
    double mean = mean(values);
    return Arrays.stream(values).map(x -> Math.pow(x - mean, power)).sum() / values.length;
  }

  /**
   * The standard error of a standard deviation from n trials is u x root((kurtosis - 1) / (4 n));
   * five of them, and a thousandth for products of errors that the law leaves out.
   */
  private static void assertSpread(UncertaintyBudget budget, double[] values, long seed) {
    double deviation = Math.sqrt(moment(values, 2));
    double kurtosis = moment(values, 4) / (deviation * deviation * deviation * deviation);
    double standardError = deviation * Math.sqrt((kurtosis - 1) / (4.0 * values.length));
    assertEquals(
        deviation,
        budget.combined(),
        5 * standardError + 1e-3 * deviation,
        budget.result().name() + ", seed " + seed);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 5, 25})
  void agreesWithRandomTrialsForAnUprightSilo(double tilt) {
    long seed = 100 + (long) tilt;
    MeasuredContent content = content(upright(), 9, tilt);
    double area = Math.PI * 9;
    double[][] results = trials(content, level -> area * level, seed);

    ContentUncertainty uncertainty = uncertainty(content);

    assertSpread(uncertainty.level(), results[0], seed);
    assertSpread(uncertainty.volume(), results[1], seed);
    assertSpread(uncertainty.mass(), results[2], seed);
    assertFalse(uncertainty.volume().linearisationDoubtful());
  }

  /** Plain circular segment, half full. */
  private static double segment(double height, double diameter, double length) {
    double r = diameter / 2;
    double h = Math.min(Math.max(height, 0), diameter);
    return length * (r * r * Math.acos((r - h) / r) - (r - h) * Math.sqrt(2 * r * h - h * h));
  }

  @ParameterizedTest
  @ValueSource(doubles = {9, 11, 13, 15})
  void agreesWithRandomTrialsForALyingTank(double distance) {
    long seed = 200 + (long) distance;
    MeasuredContent content = content(new LyingCylinder(10, 12), distance, 3);
    double[][] results = trials(content, level -> segment(level, 10, 12), seed);

    ContentUncertainty uncertainty = uncertainty(content);

    assertSpread(uncertainty.volume(), results[1], seed);
    assertSpread(uncertainty.mass(), results[2], seed);
    assertFalse(uncertainty.mass().linearisationDoubtful());
  }

  /**
   * JCGM 101:2008, clause 8.1: the 95 % interval of the law and that of the trials agree within
   * half a unit of the last digit of u, here written with one digit (clause 7.9.2).
   */
  @Test
  void theCoverageIntervalPassesTheValidationOfJcgm101() {
    long seed = 300;
    MeasuredContent content = content(upright(), 9, 5);
    double area = Math.PI * 9;
    double[][] results = trials(content, level -> area * level, seed);
    List<UncertaintyBudget> budgets =
        List.of(
            uncertainty(content).level(),
            uncertainty(content).volume(),
            uncertainty(content).mass());
    for (int q = 0; q < 3; q++) {
      UncertaintyBudget budget = budgets.get(q);
      double[] sorted = results[q].clone();
      Arrays.sort(sorted);
      double tolerance = Math.pow(10, Math.floor(Math.log10(budget.combined()))) / 2;
      double half = 1.96 * budget.combined();
      assertEquals(sorted[TRIALS / 40], budget.result().value() - half, tolerance, "seed " + seed);
      assertEquals(
          sorted[TRIALS - TRIALS / 40], budget.result().value() + half, tolerance, "seed " + seed);
    }
  }

  /** At the bottom of a lying tank the line fails, and the budget must say so. */
  @Test
  void tellsThatTheLineFailsNearTheBottomOfALyingTank() {
    long seed = 400;
    List<UncertaintySource> coarse =
        List.of(UncertaintySource.certified("level", Influence.REFERENCE_HEIGHT, 0.1, 1));
    MeasuredContent content =
        new MeasuredContent(new Beam(16.9, 0, 17), new LyingCylinder(10, 12), DENSITY, 0);
    Random random = new Random(seed);
    double[] volumes = new double[TRIALS];
    for (int i = 0; i < TRIALS; i++) {
      volumes[i] = segment(0.1 + 0.1 * random.nextGaussian(), 10, 12);
    }
    UncertaintyBudget budget = ContentUncertainty.of(content, coarse, 2).volume();

    double deviation = Math.sqrt(moment(volumes, 2));
    assertTrue(Math.abs(budget.combined() / deviation - 1) > 0.02, "seed " + seed);
    assertTrue(budget.linearisationDoubtful());
    assertTrue(budget.text().contains("doubtful: the curve bends"), budget.text());
    assertTrue(budget.text().contains("the curve ends at 0.0000"), budget.text());
  }

  @Test
  void tellsWhenTheLevelMayLieAboveTheTop() {
    List<UncertaintySource> sources =
        List.of(UncertaintySource.rectangular("d", Influence.DISTANCE, 0.1));
    assertTrue(
        ContentUncertainty.of(content(upright(), 1.05, 0), sources, 2)
            .mass()
            .linearisationDoubtful());
    assertFalse(
        ContentUncertainty.of(content(upright(), 1.2, 0), sources, 2)
            .mass()
            .linearisationDoubtful());
  }

  /** A bend that hides behind a far larger error of the table does no harm. */
  @Test
  void doesNotCryWolfWhereTheLevelHardlyMatters() {
    MeasuredContent content = content(new Sphere(10), 15, 0);
    UncertaintySource level = UncertaintySource.rectangular("d", Influence.DISTANCE, 0.5);
    UncertaintySource table = UncertaintySource.certified("t", Influence.VOLUME, 60, 1);

    assertTrue(ContentUncertainty.of(content, List.of(level), 2).volume().linearisationDoubtful());
    assertFalse(
        ContentUncertainty.of(content, List.of(level, table), 2).volume().linearisationDoubtful());
  }

  /** A plumb beam has no slope against its tilt: 9 m x half the spread of (1 degree)^2. */
  @Test
  void aPlumbBeamKeepsTheTermOfSecondOrder() {
    List<UncertaintySource> tilt =
        List.of(UncertaintySource.certified("tilt", Influence.TILT, 2, 1));
    UncertaintyBudget level = ContentUncertainty.of(content(upright(), 9, 0), tilt, 2).level();

    double radians = Math.toRadians(2);
    assertEquals(0, level.contributions().get(0).inResult());
    assertEquals(9 * radians * radians / Math.sqrt(2), level.combined(), 1e-12);
  }

  @Test
  void usesTheTablesOwnSlopeByACentralDifference() {
    CapacityTable table =
        CapacityTable.read("height [m];volume [m3]\n0;0\n8;80\n16;240\n", "table");
    List<UncertaintySource> sources =
        List.of(UncertaintySource.certified("d", Influence.DISTANCE, 0.01, 1));

    UncertaintyBudget low = ContentUncertainty.of(content(table, 13, 0), sources, 2).volume();
    UncertaintyBudget kink = ContentUncertainty.of(content(table, 9, 0), sources, 2).volume();

    assertEquals(0.1, low.combined(), 1e-9);
    assertFalse(low.linearisationDoubtful());
    assertEquals(0.15, kink.combined(), 1e-9);
    assertTrue(kink.linearisationDoubtful());
  }

  /** Two loops on one supply that err together: the sum, not the root of the squares. */
  @Test
  void countsACorrelationInEveryBudgetThatHasBothSources() {
    UncertaintySource a = UncertaintySource.certified("a", Influence.DISTANCE, 0.01, 1);
    UncertaintySource b = UncertaintySource.certified("b", Influence.DISTANCE, 0.02, 1);
    UncertaintySource density = UncertaintySource.certified("c", Influence.DENSITY, 1, 1);
    ContentUncertainty uncertainty =
        ContentUncertainty.of(
            content(upright(), 9, 0),
            List.of(a, b, density),
            List.of(new Correlation("a", "b", 1), new Correlation("b", "c", 0)),
            2);

    assertEquals(0.03, uncertainty.level().combined(), 1e-12);
    assertEquals(1, uncertainty.level().correlations().size());
    assertEquals(2, uncertainty.mass().correlations().size());
    assertEquals(0.03 * 9 * Math.PI, uncertainty.volume().combined(), 1e-9);
  }

  @Test
  void refusesUnknownNamesAndSourcesTwice() {
    MeasuredContent content = content(upright(), 9, 0);
    UncertaintySource a = UncertaintySource.certified("a", Influence.DISTANCE, 0.01, 1);
    Refusals.assertRefused(
        "UncertaintyBudget.source", () -> ContentUncertainty.of(content, List.of(a, a), 2));
    Refusals.assertRefused(
        "UncertaintyBudget.correlation",
        () -> ContentUncertainty.of(content, List.of(a), List.of(new Correlation("a", "x", 0)), 2));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1e-9})
  void refusesModelsThatAreNone(double bad) {
    Refusals.assertRefused("Beam.distance", () -> new Beam(bad, 0, 17));
    Refusals.assertRefused("Beam.tilt", () -> new Beam(9, bad, 17));
    Refusals.assertRefused("Beam.tilt", () -> new Beam(9, 80.01, 17));
    Refusals.assertRefused(
        "MeasuredContent.density",
        () -> new MeasuredContent(new Beam(9, 0, 17), upright(), bad, 0));
    if (!Double.isFinite(bad)) {
      Refusals.assertRefused("Beam.referenceHeight", () -> new Beam(9, 0, bad));
      Refusals.assertRefused(
          "MeasuredContent.densityPerKelvin",
          () -> new MeasuredContent(new Beam(9, 0, 17), upright(), 1, bad));
    }
    Refusals.assertRefused(
        "ContentUncertainty.coverageFactor",
        () -> ContentUncertainty.of(content(upright(), 9, 0), SOURCES, bad));
  }
}
