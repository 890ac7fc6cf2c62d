package io.strapline.level.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import io.strapline.level.testing.Refusal;
import io.strapline.level.testing.Refusals;
import io.strapline.level.uncertainty.UncertaintyBudget.Measurand;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class UncertaintyBudgetTest {

  private static final double V = 4.9990;
  private static final double I = 19.6610e-3;
  private static final double PHI = 1.04446;

  private static final List<Correlation> H2_CORRELATIONS =
      List.of(
          new Correlation("V", "I", -0.36),
          new Correlation("V", "phi", 0.86),
          new Correlation("I", "phi", -0.65));

  private static Contribution line(String name, double standard, double sensitivity) {
    return line(name, StandardUncertainty.exact(standard), sensitivity);
  }

  private static Contribution line(String name, StandardUncertainty standard, double sensitivity) {
    return new Contribution(name, EvaluationType.B, Distribution.NORMAL, standard, sensitivity);
  }

  private static UncertaintyBudget budget(List<Contribution> lines, Correlation... correlations) {
    return new UncertaintyBudget(
        new Measurand("length", 50_000_838, "nm"), lines, List.of(correlations), 2, List.of());
  }

  private static UncertaintyBudget h1() {
    List<Contribution> lines = new ArrayList<>();
    for (CsvRow row : CsvRows.read(UncertaintyBudgetTest.class, "gum_h1.csv")) {
      StandardUncertainty standard =
          new StandardUncertainty(row.number("standard_nm"), row.number("degrees_of_freedom"));
      lines.add(line(row.text("name"), standard, row.number("sensitivity")));
    }
    return budget(lines);
  }

  /** GUM H.1: end gauge calibration, u = 32 nm; the lines as the open library GTC prints them. */
  @Test
  void combinesTheEndGaugeOfTheGum() {
    UncertaintyBudget budget = h1();
    List<CsvRow> rows = CsvRows.read(UncertaintyBudgetTest.class, "gum_h1.csv");
    for (int i = 0; i < rows.size(); i++) {
      double published = rows.get(i).number("in_result_nm");
      assertEquals(published, budget.contributions().get(i).inResult(), 1e-4 * published);
    }
    assertEquals(32, budget.combined(), 0.5);
    assertEquals(2 * budget.combined(), budget.expanded());
  }

  /** GUM H.1.6 rounds to 16; GTC gives 16.5 where the lines of second order are left out. */
  @Test
  void findsTheDegreesOfFreedomOfTheEndGauge() {
    assertEquals(16.5, h1().effectiveDegreesOfFreedom().orElseThrow(), 0.3);
  }

  static List<CsvRow> h2() {
    return CsvRows.read(UncertaintyBudgetTest.class, "gum_h2.csv");
  }

  private static double value(String quantity) {
    double impedance = V / I;
    return switch (quantity) {
      case "R" -> impedance * Math.cos(PHI);
      case "X" -> impedance * Math.sin(PHI);
      default -> impedance;
    };
  }

  private static double[] slopes(String quantity) {
    double part = value(quantity) / (V / I);
    double byPhase =
        switch (quantity) {
          case "R" -> -V / I * Math.sin(PHI);
          case "X" -> V / I * Math.cos(PHI);
          default -> 0;
        };
    return new double[] {part / I, -V / (I * I) * part, byPhase};
  }

  /** GUM H.2: three quantities from three correlated inputs. */
  @ParameterizedTest
  @MethodSource("h2")
  void combinesCorrelatedInputsAsTheGumDoes(CsvRow row) {
    String quantity = row.text("quantity");
    double[] slopes = slopes(quantity);
    List<Contribution> lines =
        List.of(
            line("V", 0.0032, slopes[0]),
            line("I", 0.0095e-3, slopes[1]),
            line("phi", 0.00075, slopes[2]));
    UncertaintyBudget budget =
        new UncertaintyBudget(
            new Measurand(quantity, value(quantity), "ohm"), lines, H2_CORRELATIONS, 2, List.of());

    assertEquals(row.number("value"), budget.result().value(), 0.005);
    assertEquals(row.number("combined"), budget.combined(), row.number("tolerance"));
    assertEquals(OptionalDouble.empty(), budget.effectiveDegreesOfFreedom());
  }

  @Test
  void independentLinesAddBySquaresAndTheirSharesMakeAHundred() {
    UncertaintyBudget budget = budget(List.of(line("a", 3, 1), line("b", 2, -2)));

    assertEquals(5, budget.combined(), 1e-15);
    assertEquals(36, budget.sharePercent(budget.contributions().get(0)), 1e-12);
    assertEquals(64, budget.sharePercent(budget.contributions().get(1)), 1e-12);
  }

  @Test
  void fullyCorrelatedLinesAddOrCancelWithTheirSigns() {
    List<Contribution> lines = List.of(line("a", 3, 1), line("b", 2, -2));

    assertEquals(7, budget(lines, new Correlation("a", "b", -1)).combined(), 1e-12);
    assertEquals(1, budget(lines, new Correlation("b", "a", 1)).combined(), 1e-12);
  }

  @Test
  void nothingUncertainIsZeroAndHasNoDegreesOfFreedom() {
    UncertaintyBudget budget = budget(List.of(line("a", 0, 1)));

    assertEquals(0, budget.combined());
    assertEquals(0, budget.sharePercent(budget.contributions().get(0)));
    assertEquals(OptionalDouble.empty(), budget.effectiveDegreesOfFreedom());
    assertFalse(budget.linearisationDoubtful());
  }

  /** n readings alone: the formula must give back n - 1. */
  @Test
  void oneLineKeepsItsOwnDegreesOfFreedom() {
    StandardUncertainty noise = StandardUncertainty.ofReadings(List.of(1.0, 2.0, 3.0, 4.0));

    assertEquals(Math.sqrt(5 / 3.0), noise.value(), 1e-15);
    assertEquals(
        3, budget(List.of(line("n", noise, 7))).effectiveDegreesOfFreedom().orElseThrow(), 1e-12);
  }

  @Test
  void refusesCorrelationsThatCannotAllBeTrue() {
    List<Contribution> lines = List.of(line("a", 1, 1), line("b", 1, 1), line("c", 1, 1));
    String message =
        Refusal.of(
            () ->
                budget(
                    lines,
                    new Correlation("a", "b", -0.9),
                    new Correlation("b", "c", -0.9),
                    new Correlation("a", "c", -0.9)));
    assertTrue(message.contains("cannot all be true together"), message);
  }

  @Test
  void acceptsCorrelationsAtTheVeryLimit() {
    List<Contribution> lines = List.of(line("a", 1, 1), line("b", 1, 1), line("c", 1, 1));
    UncertaintyBudget budget =
        budget(
            lines,
            new Correlation("a", "b", 1),
            new Correlation("b", "c", -1),
            new Correlation("a", "c", -1));
    assertEquals(1, budget.combined(), 1e-12);
  }

  @Test
  void refusesNamesThatAreTwiceOrUnknownAndPairsStatedTwice() {
    List<Contribution> lines = List.of(line("a", 1, 1), line("b", 1, 1));
    Refusals.assertRefused(
        "UncertaintyBudget.source", () -> budget(List.of(line("a", 1, 1), line("a", 1, 1))));
    Refusals.assertRefused(
        "UncertaintyBudget.correlation", () -> budget(lines, new Correlation("a", "x", 0.5)));
    Refusals.assertRefused(
        "UncertaintyBudget.correlation",
        () -> budget(lines, new Correlation("a", "b", 0.5), new Correlation("b", "a", 0.5)));
    Refusals.assertRefused("Correlation.second", () -> new Correlation("a", "a", 0.5));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, -1.0001, 1.0001, Double.POSITIVE_INFINITY})
  void refusesCoefficientsThatAreNone(double bad) {
    Refusals.assertRefused("Correlation.coefficient", () -> new Correlation("a", "b", bad));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, 0, 0.99, 10.01, Double.POSITIVE_INFINITY, -2})
  void refusesCoverageFactorsThatAreNone(double bad) {
    Measurand result = new Measurand("level", 1, "m");
    Refusals.assertRefused(
        "UncertaintyBudget.coverageFactor",
        () -> new UncertaintyBudget(result, List.of(), List.of(), bad, List.of()));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void refusesResultsAndSensitivitiesThatAreNotFinite(double bad) {
    Refusals.assertRefused("Measurand.value", () -> new Measurand("level", bad, "m"));
    Refusals.assertRefused("Contribution.sensitivity", () -> line("a", 1, bad));
  }

  @Test
  void printsEveryLineWithItsShare() {
    String text = budget(List.of(line("noise", 3, 1), line("table", 2, -2))).text();

    assertTrue(text.contains("noise"), text);
    assertTrue(text.contains("36.0 %"), text);
    assertTrue(text.contains("64.0 %"), text);
    assertTrue(text.contains("expanded uncertainty (k = 2.000) 10.00 nm"), text);
  }
}
