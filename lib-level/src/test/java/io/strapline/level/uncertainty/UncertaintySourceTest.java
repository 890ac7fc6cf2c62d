package io.strapline.level.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.Refusals;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class UncertaintySourceTest {

  /** GUM 4.3.7: half-width over root 3; 4.3.9: over root 6; H.1.3.5: 0.5 degC cycles give 0.35. */
  @Test
  void turnsHalfWidthsIntoStandardUncertaintiesAsTheGumDoes() {
    assertEquals(0.05 / Math.sqrt(3), limited(Distribution.RECTANGULAR, 0.05), 1e-17);
    assertEquals(0.05 / Math.sqrt(6), limited(Distribution.TRIANGULAR, 0.05), 1e-17);
    assertEquals(0.35, limited(Distribution.U_SHAPED, 0.5), 0.005);
  }

  private static double limited(Distribution distribution, double halfWidth) {
    return UncertaintySource.limited("s", Influence.DISTANCE, distribution, halfWidth)
        .standard()
        .value();
  }

  /** The two figures of each shape against the spread of random numbers of that shape. */
  @ParameterizedTest
  @EnumSource(Distribution.class)
  void shapesHaveTheSpreadOfTheirRandomNumbers(Distribution distribution) {
    int trials = 200_000;
    long seed = 31;
    Random random = new Random(seed);
    double second = 0;
    double fourth = 0;
    for (int i = 0; i < trials; i++) {
      double x = Draws.standard(distribution, random);
      second += x * x / trials;
      fourth += x * x * x * x / trials;
    }
    // Standard errors of the two means from the moments of the shapes, at most root(96 / trials).
    assertEquals(1, second, 5 * Math.sqrt(2.0 / trials), "seed " + seed);
    assertEquals(distribution.kurtosis(), fourth, 5 * Math.sqrt(96.0 / trials), "seed " + seed);
  }

  /** GUM 4.3.3 takes 240 micrograms, three standard deviations, as 80. */
  @Test
  void dividesACertificateByItsFactor() {
    UncertaintySource source = UncertaintySource.certified("c", Influence.DISTANCE, 240, 3);

    assertEquals(80, source.standard().value());
    assertEquals(EvaluationType.B, source.type());
    assertEquals(Distribution.NORMAL, source.distribution());
  }

  /** GUM F.2.2.1: resolution dx has the standard uncertainty 0.29 dx. */
  @Test
  void takesHalfACountOfTheConverterEitherWay() {
    UncertaintySource card = LoopSources.converter("card", 1000, 20);

    assertEquals(0.29 * 20 / 1000, card.standard().value(), 0.005 * 20 / 1000);
    assertEquals(Influence.DISTANCE, card.influence());
  }

  @Test
  void takesPercentOfSpanAsLimits() {
    assertEquals(
        0.02 / Math.sqrt(3), LoopSources.current("output", 0.1, 20).standard().value(), 1e-16);
  }

  @Test
  void measuresTheNoiseOfTheLiveSignal() {
    List<Double> readings = new ArrayList<>();
    long seed = 8;
    Random random = new Random(seed);
    for (int i = 0; i < 2_000; i++) {
      readings.add(12 + 0.004 * random.nextGaussian());
    }
    UncertaintySource one = UncertaintySource.measured("noise", Influence.DISTANCE, readings, 1);
    UncertaintySource mean = UncertaintySource.measured("noise", Influence.DISTANCE, readings, 16);

    double standardError = 0.004 / Math.sqrt(2 * 2_000);
    assertEquals(0.004, one.standard().value(), 5 * standardError, "seed " + seed);
    assertEquals(one.standard().value() / 4, mean.standard().value(), 1e-15);
    assertEquals(1_999, one.standard().degreesOfFreedom());
    assertEquals(EvaluationType.A, one.type());
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, -1e-9, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void refusesSizesThatAreNone(double bad) {
    Refusals.assertRefused(
        "UncertaintySource.halfWidth",
        () -> UncertaintySource.rectangular("s", Influence.DISTANCE, bad));
    Refusals.assertRefused(
        "UncertaintySource.expanded",
        () -> UncertaintySource.certified("s", Influence.DISTANCE, bad, 2));
    Refusals.assertRefused("StandardUncertainty.value", () -> StandardUncertainty.exact(bad));
    Refusals.assertRefused("LoopSources.percentOfSpan", () -> LoopSources.current("s", bad, 1));
    Refusals.assertRefused("LoopSources.countsOfSpan", () -> LoopSources.converter("s", bad, 1));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, 0, -1, Double.NEGATIVE_INFINITY})
  void refusesFactorsFreedomsAndSpansThatAreNotPositive(double bad) {
    Refusals.assertRefused(
        "UncertaintySource.coverageFactor",
        () -> UncertaintySource.certified("s", Influence.DISTANCE, 1, bad));
    Refusals.assertRefused(
        "StandardUncertainty.degreesOfFreedom", () -> new StandardUncertainty(1, bad));
    Refusals.assertRefused("LoopSources.span", () -> LoopSources.current("s", 1, bad));
    Refusals.assertRefused("LoopSources.span", () -> LoopSources.converter("s", 1, bad));
  }

  @Test
  void refusesLimitsOfANormalDistributionAndTooFewReadings() {
    Refusals.assertRefused(
        "UncertaintySource.distribution",
        () -> UncertaintySource.limited("s", Influence.TILT, Distribution.NORMAL, 1));
    Refusals.assertRefused(
        "StandardUncertainty.readings", () -> StandardUncertainty.ofReadings(List.of(1.0)));
    Refusals.assertRefused(
        "StandardUncertainty.reading",
        () -> StandardUncertainty.ofReadings(List.of(1.0, Double.NaN)));
    Refusals.assertRefused(
        "UncertaintySource.averaged",
        () -> UncertaintySource.measured("s", Influence.DISTANCE, List.of(1.0, 2.0), 0));
  }

  @Test
  void everyInfluenceHasAUnit() {
    for (Influence influence : Influence.values()) {
      assertTrue(influence.unit().matches("[A-Za-z0-9/]+"), influence.unit());
    }
  }
}
