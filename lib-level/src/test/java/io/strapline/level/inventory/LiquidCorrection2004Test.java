package io.strapline.level.inventory;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import io.strapline.level.units.TemperatureUnit;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class LiquidCorrection2004Test {

  // Pounds-force per square inch: 6894.757 Pa (NIST SP 811, appendix B.8).
  private static final double PSI = 6894.757293168;

  private static final LiquidCorrection2004 CRUDE =
      LiquidCorrection2004.of(ProductGroup.CRUDE_OIL, StandardDensity.at60Fahrenheit(850));

  static List<CsvRow> references() {
    return CsvRows.read(LiquidCorrection2004Test.class, "ctl_2004_reference.csv");
  }

  private static double celsius(double fahrenheit) {
    return TemperatureUnit.DEGREE_FAHRENHEIT.toSi(fahrenheit);
  }

  @ParameterizedTest
  @MethodSource("references")
  void meetsAnIndependentEvaluationOfThePublishedFormulas(CsvRow row) {
    LiquidCorrection2004 correction =
        LiquidCorrection2004.of(
            ProductGroup.valueOf(row.text("group")),
            StandardDensity.at60Fahrenheit(row.number("density_kg_m3_60F")));
    double celsius = celsius(row.number("temperature_F"));
    double tolerance = row.number("rel_tol");
    assertEquals(row.number("ctl"), correction.ctl(celsius), tolerance);
    double cpl = correction.cpl(celsius, Math.min(row.number("pressure_psi") * PSI, 10_342_135.9));
    assertEquals(row.number("cpl"), cpl, Math.max(tolerance, 1e-9));
  }

  // The base is 60.0068749 degF of the older scale because 60 degF is that.
  @ParameterizedTest
  @EnumSource(ProductGroup.class)
  void isOneAtSixtyFahrenheitWithoutPressure(ProductGroup group) {
    ExpansionConstants k = group.constants(StandardBase.SIXTY_FAHRENHEIT);
    StandardDensity density = StandardDensity.at60Fahrenheit((k.least() + k.greatest()) / 2);
    LiquidCorrection2004 correction = LiquidCorrection2004.of(group, density);
    assertEquals(1, correction.ctl(celsius(60)), 1e-10);
    assertEquals(1, correction.cpl(celsius(60), 0));
  }

  // The publisher's abstract of API MPMS 11.1 (2004): at atmospheric pressure it gives CTL
  // consistent with the 1980 tables, which are printed to four or five decimals.
  @ParameterizedTest
  @ValueSource(doubles = {10, 25, 32, 38, 45, 50.5, 60, 75})
  void agreesWithThe1980FormToTheTablesDigits(double gravity) {
    StandardDensity density = StandardDensity.ofApiGravity1980(gravity);
    ProductGroup group = ProductGroup.ofRefined(density);
    LiquidCorrection1980 old = LiquidCorrection1980.of(group, density);
    LiquidCorrection2004 current = LiquidCorrection2004.of(group, density);
    for (int t = 0; t <= 200; t += 10) {
      assertEquals(old.ctl(celsius(t)), current.ctl(celsius(t)), 5e-5, "at " + t + " degF");
    }
  }

  @Test
  void pressureRaisesTheVolumeAtTheBase() {
    double last = 1;
    for (int psi = 100; psi <= 1500; psi += 100) {
      double cpl = CRUDE.cpl(30, psi * PSI * (1 - 1e-12));
      assertEquals(true, cpl > last, "at " + psi);
      last = cpl;
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -50.01, 150.01})
  void refusesTemperatures(double wrong) {
    assertRefused("LiquidCorrection2004.temperature", () -> CRUDE.ctl(wrong));
    assertRefused("LiquidCorrection2004.temperature", () -> CRUDE.cpl(wrong, 0));
    assertEquals(true, CRUDE.ctl(-50) > CRUDE.ctl(150));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1, 10_342_200})
  void refusesPressures(double wrong) {
    assertRefused("LiquidCorrection2004.pressure", () -> CRUDE.cpl(20, wrong));
  }

  @Test
  void refusesAnotherBaseAndAnotherGroupsDensity() {
    assertRefused(
        "LiquidCorrection2004.base",
        () -> LiquidCorrection2004.of(ProductGroup.CRUDE_OIL, StandardDensity.at15Celsius(850)));
    assertRefused(
        "ProductGroup.density",
        () -> LiquidCorrection2004.of(ProductGroup.GASOLINE, StandardDensity.at60Fahrenheit(850)));
  }
}
