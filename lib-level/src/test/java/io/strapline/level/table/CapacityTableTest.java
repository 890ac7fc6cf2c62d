package io.strapline.level.table;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class CapacityTableTest {

  static List<CsvRow> checks(String method, String direction) {
    List<CsvRow> rows =
        CsvRows.read(CapacityTableTest.class, "strapping_checks.csv").stream()
            .filter(row -> row.text("method").equals(method))
            .filter(row -> row.text("direction").equals(direction))
            .toList();
    assertFalse(rows.isEmpty(), method + " " + direction);
    return rows;
  }

  static List<CsvRow> linear() {
    return checks("linear", "level_to_volume");
  }

  // numpy 1.24.2 interp, equal to exact fractions.
  @ParameterizedTest
  @MethodSource("linear")
  void interpolatesInStraightLinesAsTheReferenceLibrary(CsvRow row) {
    assertVolume(row, Interpolation.LINEAR);
  }

  static List<CsvRow> fritschCarlson() {
    return checks("monotone_fritsch_carlson", "level_to_volume");
  }

  // R 4.2.2 splinefun(method = "monoH.FC").
  @ParameterizedTest
  @MethodSource("fritschCarlson")
  void interpolatesByFritschAndCarlsonAsTheReferenceLibrary(CsvRow row) {
    assertVolume(row, Interpolation.FRITSCH_CARLSON);
  }

  static List<CsvRow> inverse() {
    return checks("linear", "volume_to_level");
  }

  // numpy 1.24.2 interp with axes swapped; the file's tolerance applies to the level.
  @ParameterizedTest
  @MethodSource("inverse")
  void findsTheHeightOfAVolumeAsTheReferenceLibrary(CsvRow row) {
    CapacityTable table = StrappingTables.table(row.text("table_id"), Interpolation.LINEAR);
    double expected = row.number("h_m");

    assertEquals(
        expected,
        table.heightMetres(row.number("volume_m3")),
        row.tolerance(expected),
        row::toString);
  }

  private static void assertVolume(CsvRow row, Interpolation interpolation) {
    CapacityTable table = StrappingTables.table(row.text("table_id"), interpolation);
    double expected = row.number("volume_m3");

    assertEquals(
        expected,
        table.volumeCubicMetres(row.number("h_m")),
        row.tolerance(expected),
        row::toString);
  }

  static Stream<CapacityTable> tables() {
    List<CapacityTable> tables = new ArrayList<>();
    for (Interpolation interpolation : Interpolation.values()) {
      for (String letter : StrappingTables.LETTERS) {
        tables.add(StrappingTables.table(letter, interpolation));
      }
      tables.add(randomTable(new Random(71), interpolation));
    }
    return tables.stream();
  }

  private static CapacityTable randomTable(Random random, Interpolation interpolation) {
    List<CapacityRow> rows = new ArrayList<>();
    double height = 0;
    double volume = 0;
    for (int i = 1; i <= 200; i++) {
      rows.add(new CapacityRow(i, height, volume));
      double step = 0.01 + random.nextDouble();
      height += step;
      volume += random.nextInt(5) == 0 ? 0 : step * (0.5 + random.nextDouble());
    }
    return CapacityTable.of("random", rows, interpolation);
  }

  @ParameterizedTest
  @EnumSource(Interpolation.class)
  void passesExactlyThroughEveryRow(Interpolation interpolation) {
    for (String letter : StrappingTables.LETTERS) {
      CapacityTable table = StrappingTables.table(letter, interpolation);
      for (CapacityRow row : StrappingTables.rows(letter)) {
        assertEquals(
            row.volumeCubicMetres(),
            table.volumeCubicMetres(row.heightMetres()),
            letter + " " + row);
      }
    }
  }

  @ParameterizedTest
  @MethodSource("tables")
  void neverFallsInEitherDirection(CapacityTable table) {
    long seed = 1980;
    Random random = new Random(seed);
    double span = table.maxHeightMetres() - table.minHeightMetres();
    for (int i = 0; i < 5_000; i++) {
      double low = table.minHeightMetres() + (random.nextDouble() * 1.2 - 0.1) * span;
      double high = low + random.nextDouble() * span / 50;
      String where = table + " seed " + seed + " between " + low + " and " + high;
      assertTrue(table.volumeCubicMetres(low) <= table.volumeCubicMetres(high), where);
      double volume = random.nextDouble() * table.capacityCubicMetres();
      double more = volume + random.nextDouble() * table.capacityCubicMetres() / 50;
      assertTrue(table.heightMetres(volume) <= table.heightMetres(more), where);
    }
  }

  @ParameterizedTest
  @MethodSource("tables")
  void returnsToTheVolumeThroughItsHeight(CapacityTable table) {
    long seed = 42;
    Random random = new Random(seed);
    double span = table.capacityCubicMetres() - table.heelCubicMetres();
    for (int i = 0; i < 2_000; i++) {
      double volume = table.heelCubicMetres() + random.nextDouble() * span;
      double back = table.volumeCubicMetres(table.heightMetres(volume));
      assertEquals(volume, back, 1e-12 * table.capacityCubicMetres(), table + " seed " + seed);
    }
  }

  // The cells of the index must agree with a plain search at every row and beside it.
  @ParameterizedTest
  @MethodSource("tables")
  void isContinuousAtEveryRow(CapacityTable table) {
    long seed = 7;
    Random random = new Random(seed);
    double slack = 1e-9 * table.capacityCubicMetres();
    for (int i = 0; i < 5_000; i++) {
      double height = table.heightMetres(random.nextDouble() * table.capacityCubicMetres());
      double below = table.volumeCubicMetres(Math.nextDown(height));
      double above = table.volumeCubicMetres(Math.nextUp(height));
      assertTrue(
          above - below >= 0 && above - below < slack, table + " seed " + seed + " " + height);
    }
  }

  @ParameterizedTest
  @EnumSource(Interpolation.class)
  void holdsTheEndValueBeyondBothEndsAndSaysSo(Interpolation interpolation) {
    CapacityTable table = StrappingTables.table("D", interpolation);

    for (double below : new double[] {0.2, 0.1999, 0, -0.0, -5, Double.NEGATIVE_INFINITY}) {
      assertEquals(1.5, table.volumeCubicMetres(below));
      assertEquals(below == 0.2, table.covers(below), "height " + below);
    }
    for (double above : new double[] {4.2, 4.2001, 100, Double.POSITIVE_INFINITY}) {
      assertEquals(21.5, table.volumeCubicMetres(above));
      assertEquals(above == 4.2, table.covers(above), "height " + above);
    }
  }

  @Test
  void countsAHairBeyondTheEndsAsInside() {
    CapacityTable table = StrappingTables.table("D", Interpolation.LINEAR);

    assertTrue(table.covers(0.2 - 4e-9));
    assertFalse(table.covers(0.2 - 5e-9));
    assertTrue(table.covers(4.2 + 4e-9));
    assertFalse(table.covers(4.2 + 5e-9));
    assertFalse(table.covers(Double.NaN));
  }

  @ParameterizedTest
  @EnumSource(Interpolation.class)
  void givesTheFirstRowsHeightForTheHeelAndLess(Interpolation interpolation) {
    CapacityTable table = StrappingTables.table("D", interpolation);

    for (double volume : new double[] {1.5, 1, 0, -1, Double.NEGATIVE_INFINITY}) {
      assertEquals(0.2, table.heightMetres(volume));
    }
    for (double volume : new double[] {21.5, 22, Double.POSITIVE_INFINITY}) {
      assertEquals(4.2, table.heightMetres(volume));
    }
  }

  // Table C holds 0.9 m3 from 0.5 m to 0.6 m.
  @ParameterizedTest
  @EnumSource(Interpolation.class)
  void givesTheLowestHeightOfAFlatStep(Interpolation interpolation) {
    CapacityTable table = StrappingTables.table("C", interpolation);

    assertEquals(0.5, table.heightMetres(0.9), 1e-6);
    assertEquals(0.9, table.volumeCubicMetres(0.5));
    assertEquals(0.9, table.volumeCubicMetres(0.6));
    assertTrue(table.heightMetres(0.9000001) > 0.6);
  }

  @ParameterizedTest
  @EnumSource(Interpolation.class)
  void givesTheLowestHeightOfFlatSteps(Interpolation interpolation) {
    List<CapacityRow> rows =
        List.of(row(1, 0), row(2, 5), row(3, 5), row(4, 5), row(5, 9), row(6, 9));
    CapacityTable table = CapacityTable.of("flat", rows, interpolation);

    assertEquals(2, table.heightMetres(5), 1e-6);
    assertEquals(5, table.heightMetres(9), 1e-6);
    assertEquals(1, table.heightMetres(0));
  }

  @ParameterizedTest
  @EnumSource(Interpolation.class)
  void refusesNaNInBothDirections(Interpolation interpolation) {
    CapacityTable table = StrappingTables.table("A", interpolation);

    assertRefused("CapacityTable.height", () -> table.volumeCubicMetres(Double.NaN));
    assertRefused("CapacityTable.volume", () -> table.heightMetres(Double.NaN));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 3, 10, 1000})
  void agreesWithAPlainSearchOnIrregularHeights(int size) {
    long seed = 20_000L + size;
    Random random = new Random(seed);
    List<CapacityRow> rows = new ArrayList<>();
    double height = random.nextDouble();
    for (int i = 0; i < size; i++) {
      rows.add(new CapacityRow(i + 1, height, 3 * height));
      height += Math.pow(10, -6 * random.nextDouble());
    }
    CapacityTable table = CapacityTable.of("ray", rows, Interpolation.LINEAR);
    for (int i = 0; i < 10_000; i++) {
      double at =
          rows.get(0).heightMetres() + random.nextDouble() * (height - rows.get(0).heightMetres());
      double expected = Math.min(3 * at, table.capacityCubicMetres());
      assertEquals(expected, table.volumeCubicMetres(at), 1e-12 * expected, "seed " + seed);
    }
  }

  @Test
  void refusesMissingParts() {
    List<CapacityRow> rows = StrappingTables.rows("D");

    assertThrows(
        IllegalArgumentException.class, () -> CapacityTable.of(" ", rows, Interpolation.LINEAR));
  }

  private static CapacityRow row(int number, double volume) {
    return new CapacityRow(number, number, volume);
  }
}
