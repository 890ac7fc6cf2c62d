package io.strapline.level.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class UnitTest {

  /** The unit of each name in volume_units.csv. */
  private static final Map<String, VolumeUnit> VOLUME_UNITS =
      Map.of(
          "L", VolumeUnit.LITRE,
          "US gal", VolumeUnit.US_GALLON,
          "UK gal", VolumeUnit.IMPERIAL_GALLON,
          "bbl", VolumeUnit.OIL_BARREL,
          "ft3", VolumeUnit.CUBIC_FOOT);

  static List<CsvRow> volumeRows() {
    return CsvRows.read(UnitTest.class, "volume_units.csv");
  }

  static Stream<Unit> allUnits() {
    return Arrays.stream(Dimension.values()).flatMap(d -> Quantities.units(d).stream());
  }

  private static Optional<Unit> byCode(String code) {
    return allUnits().filter(unit -> unit.uneceCode().equals(Optional.of(code))).findFirst();
  }

  @Test
  void allVolumeRowsAreChecked() {
    assertEquals(25, volumeRows().size());
  }

  @ParameterizedTest
  @MethodSource("volumeRows")
  void volumesAgreeWithThePublishedFactorsBothWays(CsvRow row) {
    VolumeUnit unit = Objects.requireNonNull(VOLUME_UNITS.get(row.text("unit")));
    double value = row.number("value_in_unit");
    double cubicMetres = row.number("volume_m3");
    double relative = row.number("rel_tol");
    assertEquals(cubicMetres, unit.toSi(value), relative * cubicMetres);
    assertEquals(value, unit.fromSi(cubicMetres), relative * value);
  }

  /**
   * Names, codes and factors of the OPC Foundation's UNECE list. The library's unit differs from
   * the table's SI unit for current (mA), ratio (%) and angle (degree); temperatures have a test of
   * their own. Bar and decibel are no units of the library: 39 of the 44 rows are left.
   */
  @Test
  void codesAndFactorsAgreeWithThePublishedList() {
    int checked = 0;
    for (CsvRow row : CsvRows.read(UnitTest.class, "ua_units.csv")) {
      Optional<Unit> unit = byCode(row.text("unece_code"));
      if (unit.isPresent() && unit.get().dimension() != Dimension.TEMPERATURE) {
        double factor = factor(row.text("to_si_factor")) * ours(unit.get().dimension());
        assertEquals(factor, unit.get().toSi(1), 3e-16 * factor, row.text("display_name"));
        checked++;
      }
    }
    assertEquals(39, checked);
  }

  private static double factor(String text) {
    return text.equals("pi/180") ? Math.PI / 180 : Double.parseDouble(text);
  }

  private static double ours(Dimension dimension) {
    return switch (dimension) {
      case CURRENT -> 1000;
      case RATIO -> 100;
      case ANGLE -> 180 / Math.PI;
      case LENGTH,
          VOLUME,
          MASS,
          DENSITY,
          TIME,
          SPEED,
          VOLUME_FLOW,
          MASS_FLOW,
          VOLTAGE,
          RESISTANCE,
          TEMPERATURE ->
          1;
    };
  }

  /**
   * Fixed points of the scales, by their definitions: ice point, steam point, -40, absolute zero.
   */
  @ParameterizedTest
  @CsvSource({
    "DEGREE_FAHRENHEIT, 32, 0",
    "DEGREE_FAHRENHEIT, 212, 100",
    "DEGREE_FAHRENHEIT, -40, -40",
    "DEGREE_FAHRENHEIT, -459.67, -273.15",
    "KELVIN, 273.15, 0",
    "KELVIN, 0, -273.15",
    "DEGREE_CELSIUS, 25, 25",
  })
  void temperaturesMeetAtTheFixedPoints(TemperatureUnit unit, double value, double celsius) {
    assertEquals(celsius, unit.toSi(value), 1e-12);
    assertEquals(value, unit.fromSi(celsius), 1e-12);
  }

  /**
   * Factors not in the tables: NIST Special Publication 811, appendix B.8, seven digits as printed,
   * from memory.
   */
  @ParameterizedTest
  @CsvSource({
    "yd, LENGTH, 0.9144",
    "km, LENGTH, 1000",
    "yd3, VOLUME, 0.7645549",
    "lb/US gal, DENSITY, 119.8264",
    "ft/s, SPEED, 0.3048",
    "ft/min, SPEED, 0.00508",
    "ft/h, SPEED, 8.466667E-05",
    "in/s, SPEED, 0.0254",
    "US gal/min, VOLUME_FLOW, 6.309020E-05",
    "imp gal/min, VOLUME_FLOW, 7.576817E-05",
    "ft3/min, VOLUME_FLOW, 4.719474E-04",
    "ft3/s, VOLUME_FLOW, 2.831685E-02",
    "oil bbl/d, VOLUME_FLOW, 1.840131E-06",
    "lb/h, MASS_FLOW, 1.259979E-04",
    "short ton/h, MASS_FLOW, 0.2519958",
    "t/h, MASS_FLOW, 0.2777778",
    "d, TIME, 86400",
    "rad, ANGLE, 57.29578",
  })
  void otherFactorsAgreeWithTheHandbook(String symbol, Dimension dimension, double factor) {
    assertEquals(factor, Quantities.unit(symbol, dimension).toSi(1), 4e-7 * factor);
  }

  @Test
  void everyUnitComesBackFromTheLibrarysUnit() {
    allUnits()
        .forEach(
            unit -> assertEquals(12.345, unit.fromSi(unit.toSi(12.345)), 1e-13, unit.symbol()));
  }

  @Test
  void noTwoUnitsShareACommonCode() {
    Set<String> seen = new HashSet<>();
    allUnits()
        .flatMap(unit -> unit.uneceCode().stream())
        .forEach(code -> assertTrue(seen.add(code), code));
    assertTrue(seen.size() > 80, "codes: " + seen.size());
  }

  @Test
  void theFirstUnitOfEachDimensionIsTheLibrarysOwn() {
    for (Dimension dimension : Dimension.values()) {
      assertEquals(1.75, Quantities.units(dimension).get(0).toSi(1.75), dimension.phrase());
    }
  }

  @Test
  void aConversionRefusesNumbersThatMakeNoScale() {
    for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY, 0, -1}) {
      assertThrows(IllegalArgumentException.class, () -> new Conversion(0, bad, 1));
      assertThrows(IllegalArgumentException.class, () -> new Conversion(0, 1, bad));
    }
    assertThrows(IllegalArgumentException.class, () -> new Conversion(Double.NaN, 1, 1));
  }
}
