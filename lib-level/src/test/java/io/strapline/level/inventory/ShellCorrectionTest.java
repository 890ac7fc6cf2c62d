package io.strapline.level.inventory;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import io.strapline.level.units.TemperatureUnit;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class ShellCorrectionTest {

  private static final Map<String, ShellSteel> STEELS =
      Map.of(
          "mild carbon steel", ShellSteel.MILD_CARBON,
          "304 stainless steel", ShellSteel.STAINLESS_304,
          "316 stainless steel", ShellSteel.STAINLESS_316,
          "17-4PH stainless steel", ShellSteel.STAINLESS_17_4PH);

  private static final ShellCorrection BARE =
      new ShellCorrection(ShellSteel.MILD_CARBON, StandardBase.SIXTY_FAHRENHEIT, false);

  static List<CsvRow> coefficients() {
    return CsvRows.read(ShellCorrectionTest.class, "ctsh_coefficients.csv");
  }

  static List<CsvRow> examples() {
    return CsvRows.read(ShellCorrectionTest.class, "ctsh_examples.csv");
  }

  private static double fahrenheit(double degrees) {
    return TemperatureUnit.DEGREE_FAHRENHEIT.toSi(degrees);
  }

  @ParameterizedTest
  @MethodSource("coefficients")
  void holdsThePublishedCoefficients(CsvRow row) {
    ShellSteel steel = Objects.requireNonNull(STEELS.get(row.text("material")));
    assertEquals(row.number("per_degF"), steel.perDegree(StandardBase.SIXTY_FAHRENHEIT));
    assertEquals(row.number("per_degC"), steel.perDegree(StandardBase.FIFTEEN_CELSIUS));
  }

  // CTSH-1 and CTSH-2 are published; factors are printed to 8 and to 5 decimals.
  @ParameterizedTest
  @MethodSource("examples")
  void meetsThePublishedAndTheWorkedExamples(CsvRow row) {
    StandardBase base =
        row.text("unit").equals("degF")
            ? StandardBase.SIXTY_FAHRENHEIT
            : StandardBase.FIFTEEN_CELSIUS;
    assertEquals(row.number("reference_temp"), base.degrees());
    ShellCorrection correction =
        new ShellCorrection(steel(base, row.number("alpha_per_degree")), base, false);
    double liquid = base.unit().toSi(row.number("liquid_temp"));
    double ambient = base.unit().toSi(row.number("ambient_temp"));

    double shell = base.unit().fromSi(correction.shellCelsius(liquid, ambient));
    assertEquals(row.number("shell_temp"), shell, 1e-9);
    assertEquals(row.number("ctsh_with_rounded_shell"), correction.factor(liquid, ambient), 5.1e-9);
    assertEquals(row.number("ctsh_5dp"), correction.factor(liquid, ambient), 0.5e-5);
    assertEquals(
        row.number("ctsh_unrounded_shell"), correction.unroundedFactor(liquid, ambient), 5.1e-9);
  }

  private static ShellSteel steel(StandardBase base, double coefficient) {
    return Arrays.stream(ShellSteel.values())
        .filter(steel -> Math.abs(steel.perDegree(base) - coefficient) < 1e-12)
        .findFirst()
        .orElseThrow();
  }

  // 132 and 128 degF: 131.5 degF, and the conversion of scales must not lose the half.
  @Test
  void roundsHalvesUp() {
    double factor = BARE.factor(fahrenheit(132), fahrenheit(128));
    double strain = 0.0000062 * (132 - 60);
    assertEquals(1 + 2 * strain + strain * strain, factor, 1e-12);
  }

  @Test
  void anInsulatedShellHasTheLiquidsTemperature() {
    ShellCorrection insulated =
        new ShellCorrection(ShellSteel.MILD_CARBON, StandardBase.FIFTEEN_CELSIUS, true);
    assertEquals(160, insulated.shellCelsius(160, -10));
    double strain = 0.0000112 * 145;
    assertEquals(1 + 2 * strain + strain * strain, insulated.factor(160, -10), 1e-12);
  }

  @Test
  void isOneAtTheReference() {
    assertEquals(1, BARE.factor(fahrenheit(60), fahrenheit(60)));
    assertEquals(1, BARE.unroundedFactor(fahrenheit(60), fahrenheit(60)), 1e-15);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -200.1, 400.1})
  void refusesTemperaturesOfTheLiquid(double wrong) {
    assertRefused("ShellCorrection.liquid", () -> BARE.factor(wrong, 10));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -200.1, 70.1})
  void refusesTemperaturesOfTheAir(double wrong) {
    assertRefused("ShellCorrection.ambient", () -> BARE.factor(20, wrong));
  }
}
