package io.strapline.level.inventory;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.strapline.level.inventory.LiquidStock.Observed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LiquidStockTest {

  private static final LiquidCorrection CRUDE =
      LiquidCorrection1980.of(ProductGroup.CRUDE_OIL, StandardDensity.at15Celsius(850));

  // CTL 0.9872057364 is row "54A, 850 at 30 degC" of the worked examples; the rest by hand.
  @Test
  void goesFromTheTableToStandardVolumeAndMass() {
    LiquidStock stock = LiquidStock.of(Observed.plain(1000), CRUDE, 30, 0);
    assertEquals(1000, stock.grossObservedCubicMetres());
    assertEquals(987.2057364, stock.grossStandardCubicMetres(), 1e-6);
    assertEquals(839_124.87594, stock.kilograms(), 1e-3);
  }

  // (1000 - 12) x 1.00086 - 3 = 985.84968 m3, by hand; 1.00086 is the published CTSh.
  @Test
  void takesOffWaterAndRoofAndCorrectsTheShell() {
    Observed observed = new Observed(1000, 12, 1.00086, 3);
    assertEquals(985.84968, observed.grossObservedCubicMetres(), 1e-9);
    LiquidStock stock = LiquidStock.of(observed, CRUDE, 15, 0);
    assertEquals(985.84968 * 850, stock.kilograms(), 1e-6);
  }

  @Test
  void pressureCountsInThe2004Form() {
    LiquidCorrection2004 correction =
        LiquidCorrection2004.of(ProductGroup.CRUDE_OIL, StandardDensity.at60Fahrenheit(850));
    LiquidStock open = LiquidStock.of(Observed.plain(500), correction, 40, 0);
    LiquidStock closed = LiquidStock.of(Observed.plain(500), correction, 40, 1e6);
    assertEquals(
        open.grossStandardCubicMetres() * correction.cpl(40, 1e6),
        closed.grossStandardCubicMetres(),
        1e-9);
    assertEquals(1, open.cpl());
  }

  @Test
  void anEmptyTankHoldsNothing() {
    assertEquals(0, LiquidStock.of(Observed.plain(0), CRUDE, 20, 0).kilograms());
    assertEquals(0, new Observed(10, 8, 1, 5).grossObservedCubicMetres());
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1})
  void refusesVolumes(double wrong) {
    assertRefused("LiquidStock.table", () -> Observed.plain(wrong));
    assertRefused("LiquidStock.freeWater", () -> new Observed(10, wrong, 1, 0));
    assertRefused("LiquidStock.roof", () -> new Observed(10, 0, 1, wrong));
    assertRefused("LiquidStock.grossObserved", () -> new LiquidStock(wrong, 1, 1, CRUDE.density()));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, 0, 0.9799, 1.0201, 100})
  void refusesShellFactors(double wrong) {
    assertRefused("LiquidStock.shellFactor", () -> new Observed(10, 0, wrong, 0));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, 0, 0.499, 1.501})
  void refusesFactors(double wrong) {
    assertRefused("LiquidStock.ctl", () -> new LiquidStock(1, wrong, 1, CRUDE.density()));
    assertRefused("LiquidStock.cpl", () -> new LiquidStock(1, 1, wrong, CRUDE.density()));
  }

  @Test
  void refusesMoreWaterThanThereIsLiquid() {
    assertRefused("LiquidStock.freeWater", () -> new Observed(10, 10.1, 1, 0));
  }
}
