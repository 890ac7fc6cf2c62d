package io.strapline.level.inventory;

import static io.strapline.level.inventory.Series.at;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.inventory.LiquidStock.Observed;
import io.strapline.level.inventory.TimeToTarget.Outlook;
import io.strapline.level.reading.Reading;
import io.strapline.level.vessel.CapacityCurve;
import org.junit.jupiter.api.Test;

/** Runs the examples of {@code docs/inventory.md}; the expected numbers are worked by hand. */
class InventoryPageTest {

  private final CapacityCurve silo = Vessels.upright(28, 20);

  // 28 m2 x (800 x 10 - 100 x 3 x (1 - exp(-10/3))) = 215 899.7 kg; 1 % of it is water.
  @Test
  void massAndDryMassOfTheCementSilo() {
    Product cement =
        new Product("cement", BulkDensity.packing(700, 800, 3), Moisture.ofWetBasis(0.01));
    MassCurve.Mass mass = cement.massIn(silo).atHeight(10);
    assertEquals(215_899.7, mass.kilograms(), 0.05);
    assertTrue(mass.converged());
    assertEquals(213_740.7, cement.moisture().dryKilograms(mass.kilograms()), 0.05);
  }

  // A millimetre a second on 28 m2 is 0.028 m3/s; 120 s from 10 m reach 10.12 m; 20 m are 9.88 m
  // on.
  @Test
  void flowTimeToFullAndTotalsOfAFill() {
    Content volume = Content.volume(silo);
    FlowEstimator estimator = FlowEstimator.of(FlowSettings.of(60, 0.001), volume);
    Totals totals = Totals.of(0.02, volume);
    Flow flow = estimator.at(at(0));
    Reading level = Reading.good(10, at(0));
    for (int second = 0; second <= 120; second++) {
      level = Reading.good(10 + 0.001 * second, at(second));
      flow = estimator.add(level);
      totals.add(level);
    }
    assertEquals(0.028, flow.rate().value(), 1e-9);
    Reading content = level.derived(volume.at(level.value()), level.quality());
    GreatestFlows greatest = GreatestFlows.of(0.05, 0.1);
    TimeToTarget full = TimeToTarget.of(Target.full(silo), content, flow.rate(), greatest);
    assertEquals(Outlook.APPROACHING, full.outlook());
    assertEquals(9_880, full.secondsAtPresentFlow().orElseThrow(), 1e-6);
    assertEquals(28 * 9.88 / 0.05, full.secondsAtGreatestFlow().orElseThrow(), 1e-6);
    assertEquals(28 * 0.12, totals.state().filledAmount(), 1e-9);
  }

  // CTL 0.97465658 is the worked example of table 54B, 950 kg/m3 at 50 degC; TSh (7 x 50 + 10) / 8
  // =
  // 45 degC, CTSh 1 + 2 x 0.0000112 x 30 + (0.0000112 x 30)^2 = 1.000 672 113.
  @Test
  void aHeatedTankOfFuelOil() {
    StandardDensity density = StandardDensity.at15Celsius(950);
    LiquidCorrection oil = LiquidCorrection1980.of(ProductGroup.ofRefined(density), density);
    ShellCorrection shell =
        new ShellCorrection(ShellSteel.MILD_CARBON, StandardBase.FIFTEEN_CELSIUS, false);
    Observed observed = new Observed(200, 1.5, shell.factor(50, 10), 0);
    LiquidStock stock = LiquidStock.of(observed, oil, 50, 0);
    assertEquals(198.6334, stock.grossObservedCubicMetres(), 5e-5);
    assertEquals(193.5994, stock.grossStandardCubicMetres(), 5e-5);
    assertEquals(183_919.4, stock.kilograms(), 0.1);
  }
}
