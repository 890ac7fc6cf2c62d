package io.strapline.level.inventory;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import io.strapline.level.units.TemperatureUnit;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class LiquidCorrection1980Test {

  private static final Map<String, ProductGroup> GROUPS =
      Map.of(
          "crude oil", ProductGroup.CRUDE_OIL,
          "fuel oils", ProductGroup.FUEL_OIL,
          "jet fuels / kerosene", ProductGroup.JET_KEROSENE,
          "transition zone", ProductGroup.TRANSITION,
          "gasolines / naphthas", ProductGroup.GASOLINE,
          "lubricating oils", ProductGroup.LUBRICATING_OIL);

  static List<CsvRow> constants() {
    return CsvRows.read(LiquidCorrection1980Test.class, "ctl_constants.csv");
  }

  static List<CsvRow> examples() {
    return CsvRows.read(LiquidCorrection1980Test.class, "ctl_examples.csv").stream()
        .filter(row -> !row.text("table").equals("TRAP"))
        .toList();
  }

  private static CsvRow trap() {
    return CsvRows.read(LiquidCorrection1980Test.class, "ctl_examples.csv").stream()
        .filter(row -> row.text("table").equals("TRAP"))
        .findFirst()
        .orElseThrow();
  }

  private static ProductGroup group(CsvRow row) {
    ProductGroup group = GROUPS.get(row.text("group"));
    if (group == null) {
      throw new IllegalArgumentException("no group for " + row);
    }
    return group;
  }

  private static StandardDensity density(CsvRow row, double value) {
    return row.text(row.cells().containsKey("base") ? "base" : "base_temperature").equals("60 degF")
        ? StandardDensity.at60Fahrenheit(value)
        : StandardDensity.at15Celsius(value);
  }

  private static double celsius(String temperature) {
    String[] parts = temperature.split(" ", -1);
    double value = Double.parseDouble(parts[0]);
    return parts[1].equals("degF") ? TemperatureUnit.DEGREE_FAHRENHEIT.toSi(value) : value;
  }

  @ParameterizedTest
  @MethodSource("constants")
  void holdsThePublishedConstantsAndRanges(CsvRow row) {
    StandardDensity density = density(row, row.number("density_min"));
    ExpansionConstants constants = group(row).constants(density.base());
    assertEquals(row.number("K0"), constants.k0());
    assertEquals(row.number("K1"), constants.k1());
    assertEquals(row.number("K2"), constants.k2());
    assertEquals(row.number("density_min"), constants.least());
    assertEquals(row.number("density_max"), constants.greatest());
  }

  // Two bases of one law: a degree Celsius is 1.8 degrees Fahrenheit. Printed to 4 decimals.
  @ParameterizedTest
  @MethodSource("constants")
  void theConstantsOfTheBasesDifferBy1Point8(CsvRow row) {
    ExpansionConstants sixty = group(row).constants(StandardBase.SIXTY_FAHRENHEIT);
    ExpansionConstants fifteen = group(row).constants(StandardBase.FIFTEEN_CELSIUS);
    assertEquals(1.8 * sixty.k0(), fifteen.k0(), 1e-4);
    assertEquals(1.8 * sixty.k1(), fifteen.k1(), 5e-5);
    assertEquals(1.8 * sixty.k2(), fifteen.k2(), 1e-8);
  }

  // ctl_full is printed to 10 decimals, alpha to 10 decimals, density to 6.
  @ParameterizedTest
  @MethodSource("examples")
  void meetsTheWorkedExamples(CsvRow row) {
    LiquidCorrection1980 correction =
        LiquidCorrection1980.of(group(row), density(row, row.number("density_kg_m3")));
    assertEquals(row.number("alpha"), correction.alpha(), 1e-10);
    double ctl = correction.ctl(celsius(row.text("observed_temperature")));
    assertEquals(row.number("ctl_full"), ctl, 2e-10);
    assertEquals(row.number("ctl_5dp"), ctl, 0.5e-5 + 1e-9);
  }

  @ParameterizedTest
  @MethodSource("examples")
  void findsTheGroupOfRefinedProductsByDensity(CsvRow row) {
    StandardDensity density = density(row, row.number("density_kg_m3"));
    if (row.text("table").endsWith("B")) {
      assertEquals(group(row), ProductGroup.ofRefined(density));
    } else {
      assertTrue(group(row).covers(density));
    }
  }

  @ParameterizedTest
  @MethodSource("examples")
  void makesTheDensityOfAnApiGravity(CsvRow row) {
    String input = row.text("input_density");
    if (input.startsWith("API ")) {
      double gravity = Double.parseDouble(input.substring(4));
      StandardDensity density = StandardDensity.ofApiGravity1980(gravity);
      assertEquals(row.number("density_kg_m3"), density.kilogramsPerCubicMetre(), 1e-6);
      assertEquals(StandardBase.SIXTY_FAHRENHEIT, density.base());
    } else {
      assertEquals("15 degC", row.text("base"));
    }
  }

  // The row TRAP takes a 60 degF constant with degrees Celsius. The base is part of the density
  // here, so there is no call that gives its value.
  @Test
  void neverMixesTheConstantsOfTheTwoBases() {
    CsvRow trap = trap();
    double right =
        LiquidCorrection1980.of(ProductGroup.FUEL_OIL, StandardDensity.at15Celsius(840)).ctl(30);
    double sixty =
        LiquidCorrection1980.of(ProductGroup.FUEL_OIL, StandardDensity.at60Fahrenheit(840)).ctl(30);
    assertEquals(0.9873, right, 5e-5);
    // Nearly the same liquid, with its own constants and degrees.
    assertEquals(right, sixty, 1e-3);
    assertNotEquals(trap.number("ctl_full"), right, 4e-3);
    assertNotEquals(trap.number("ctl_full"), sixty, 4e-3);
  }

  @Test
  void isOneAtTheBaseAndFallsWithTheTemperature() {
    LiquidCorrection1980 crude =
        LiquidCorrection1980.of(ProductGroup.CRUDE_OIL, StandardDensity.at15Celsius(850));
    assertEquals(1, crude.ctl(15));
    double last = 2;
    for (int t = -18; t <= 150; t++) {
      double ctl = crude.ctl(t);
      assertTrue(ctl < last, "at " + t);
      last = ctl;
    }
  }

  // Gaps of the printed ranges at 15 degC, entered by the density rounded to 0.5 kg/m3, half up.
  @ParameterizedTest
  @CsvSource({
    "653.0, GASOLINE", "652.75, GASOLINE", "770.0, GASOLINE", "770.24, GASOLINE",
    "770.25, TRANSITION", "770.5, TRANSITION", "787.5, TRANSITION", "787.7, TRANSITION",
    "787.75, JET_KEROSENE", "788.0, JET_KEROSENE", "838.7, JET_KEROSENE", "838.75, FUEL_OIL",
    "839.0, FUEL_OIL", "1075.0, FUEL_OIL", "1075.24, FUEL_OIL"
  })
  void takesDensitiesBetweenThePrintedRangesByTheirRoundedValue(
      double density, ProductGroup expected) {
    assertEquals(expected, ProductGroup.ofRefined(StandardDensity.at15Celsius(density)));
  }

  @ParameterizedTest
  @CsvSource({
    "610.6, GASOLINE",
    "770.351, GASOLINE",
    "770.352, TRANSITION",
    "787.519, JET_KEROSENE",
    "838.313, FUEL_OIL",
    "1163.5, FUEL_OIL"
  })
  void theBordersAt60FahrenheitBelongToTheDenserGroup(double density, ProductGroup expected) {
    assertEquals(expected, ProductGroup.ofRefined(StandardDensity.at60Fahrenheit(density)));
  }

  @ParameterizedTest
  @ValueSource(doubles = {610.4, 652.7, 1075.25, 1200})
  void refusesDensitiesOutsideTheRanges(double density) {
    StandardDensity outside = StandardDensity.at15Celsius(density);
    assertRefused("ProductGroup.density", () -> ProductGroup.ofRefined(outside));
    assertRefused(
        "ProductGroup.density", () -> LiquidCorrection1980.of(ProductGroup.FUEL_OIL, outside));
  }

  @Test
  void refusesAGroupThatDoesNotHoldForTheDensity() {
    assertRefused(
        "ProductGroup.density",
        () -> LiquidCorrection1980.of(ProductGroup.GASOLINE, StandardDensity.at15Celsius(840)));
  }

  @ParameterizedTest
  @ValueSource(
      doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 0, -1, 0.84})
  void refusesWhatIsNoDensity(double wrong) {
    assertRefused("StandardDensity.value", () -> StandardDensity.at15Celsius(wrong));
    assertRefused("StandardDensity.value", () -> StandardDensity.at60Fahrenheit(wrong));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -10.1, 100.1, -131.5, 850})
  void refusesApiGravitiesThatAreAbsurd(double wrong) {
    assertRefused("StandardDensity.apiGravity", () -> StandardDensity.ofApiGravity1980(wrong));
    assertRefused("StandardDensity.apiGravity", () -> StandardDensity.ofApiGravity2004(wrong));
  }

  // API 10 is water: 141.5 x 999.012 / 141.5.
  @Test
  void tenDegreesApiAreWaterInBothForms() {
    assertEquals(999.012, StandardDensity.ofApiGravity1980(10).kilogramsPerCubicMetre(), 1e-9);
    assertEquals(999.016, StandardDensity.ofApiGravity2004(10).kilogramsPerCubicMetre(), 1e-9);
  }

  @ParameterizedTest
  @CsvSource({"760, -18, 90", "800, -18, 120", "850, -18, 150"})
  void statesTheTemperaturesThatADensityMayHave(double density, double least, double greatest) {
    LiquidCorrection1980 correction =
        LiquidCorrection1980.of(
            ProductGroup.ofRefined(StandardDensity.at15Celsius(density)),
            StandardDensity.at15Celsius(density));
    assertTrue(correction.ctl(least) > 1);
    assertTrue(correction.ctl(greatest) < 1);
    for (double wrong : new double[] {least - 0.01, greatest + 0.01, Double.NaN, 1e9}) {
      assertRefused("LiquidCorrection1980.temperature", () -> correction.ctl(wrong));
      assertRefused("LiquidCorrection1980.temperature", () -> correction.cpl(wrong, 0));
    }
  }

  @Test
  void statesFahrenheitRangesByApiGravity() {
    assertGreatest(300, 39.9);
    assertGreatest(250, 40.1);
    assertGreatest(200, 50.1);
    LiquidCorrection1980 lubricating =
        LiquidCorrection1980.of(ProductGroup.LUBRICATING_OIL, StandardDensity.ofApiGravity1980(45));
    assertTrue(lubricating.ctl(TemperatureUnit.DEGREE_FAHRENHEIT.toSi(300)) < 1);
  }

  private static void assertGreatest(double fahrenheit, double gravity) {
    LiquidCorrection1980 crude =
        LiquidCorrection1980.of(ProductGroup.CRUDE_OIL, StandardDensity.ofApiGravity1980(gravity));
    assertTrue(crude.ctl(TemperatureUnit.DEGREE_FAHRENHEIT.toSi(fahrenheit)) < 1);
    double above = TemperatureUnit.DEGREE_FAHRENHEIT.toSi(fahrenheit + 0.01);
    assertRefused("LiquidCorrection1980.temperature", () -> crude.ctl(above));
    assertTrue(crude.ctl(TemperatureUnit.DEGREE_FAHRENHEIT.toSi(0)) > 1);
    double below = TemperatureUnit.DEGREE_FAHRENHEIT.toSi(-0.01);
    assertThrows(IllegalArgumentException.class, () -> crude.ctl(below));
  }

  @Test
  void hasNoPressureCorrection() {
    LiquidCorrection1980 crude =
        LiquidCorrection1980.of(ProductGroup.CRUDE_OIL, StandardDensity.at15Celsius(850));
    assertEquals(1, crude.cpl(30, 0));
    assertRefused("LiquidCorrection1980.pressure", () -> crude.cpl(30, 1));
    assertRefused("LiquidCorrection1980.pressure", () -> crude.cpl(30, Double.NaN));
  }
}
