package io.strapline.level.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.Refusal;
import io.strapline.level.testing.Refusals;
import io.strapline.level.vessel.LyingCylinder;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TableThinningTest {

  /** 40 ft by sixteenths of an inch: the chart that was too long to type. */
  private static final int LONG = 40 * 12 * 16 + 1;

  /** The same by quarters, where the least error for so many rows is searched. */
  private static final int QUARTERS = 40 * 12 * 4 + 1;

  private static CapacityTable longTable() {
    return table(16, LONG);
  }

  private static CapacityTable quarters() {
    return table(4, QUARTERS);
  }

  private static CapacityTable table(int parts, int size) {
    LyingCylinder tank = new LyingCylinder(40 * 0.3048, 20);
    List<CapacityRow> rows = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      double height = Math.min(i * 0.0254 / parts, tank.maxHeightMetres());
      rows.add(new CapacityRow(i + 1, height, tank.volumeCubicMetres(height)));
    }
    return CapacityTable.of("long", rows, Interpolation.LINEAR);
  }

  private static CapacityTable random(Random random, int size) {
    List<CapacityRow> rows = new ArrayList<>();
    double height = 0;
    double volume = 0;
    for (int i = 0; i < size; i++) {
      rows.add(new CapacityRow(i + 1, height, volume));
      height += 0.9 + 0.2 * random.nextDouble();
      volume += 1 + 2 * random.nextDouble();
    }
    return CapacityTable.of("random", rows, Interpolation.LINEAR);
  }

  /**
   * The greatest error in 34 digits. Both curves are straight between the rows of the full table,
   * so their difference is greatest at one of them.
   */
  private static BigDecimal exactError(CapacityTable full, List<CapacityRow> thin) {
    MathContext digits = MathContext.DECIMAL128;
    BigDecimal greatest = BigDecimal.ZERO;
    int upper = 1;
    for (CapacityRow row : full.rows()) {
      while (row.heightMetres() > thin.get(upper).heightMetres()) {
        upper++;
      }
      CapacityRow low = thin.get(upper - 1);
      CapacityRow high = thin.get(upper);
      BigDecimal step = exact(high.heightMetres()).subtract(exact(low.heightMetres()));
      BigDecimal rise = exact(high.volumeCubicMetres()).subtract(exact(low.volumeCubicMetres()));
      BigDecimal above = exact(row.heightMetres()).subtract(exact(low.heightMetres()));
      BigDecimal line =
          exact(low.volumeCubicMetres()).add(rise.multiply(above).divide(step, digits));
      greatest = greatest.max(line.subtract(exact(row.volumeCubicMetres())).abs());
    }
    return greatest;
  }

  private static BigDecimal exact(double value) {
    return new BigDecimal(value);
  }

  @ParameterizedTest
  @ValueSource(doubles = {1e-9, 1e-4, 0.01, 0.1, 1, 10, 100})
  void keepsTheErrorExactlyAtEveryRowOfALongTable(double error) {
    CapacityTable full = longTable();

    ThinnedTable thinned = TableThinning.toError(full, error);

    assertTrue(exactError(full, thinned.table().rows()).compareTo(exact(error)) <= 0);
    assertTrue(thinned.greatestErrorCubicMetres() <= error);
    assertEquals(LONG, thinned.originalRows());
  }

  @Test
  void theErrorBetweenTheRowsIsNoGreaterThanTheErrorReported() {
    CapacityTable full = quarters();
    ThinnedTable thinned = TableThinning.toRows(full, 32);
    long seed = 77;
    Random random = new Random(seed);
    double rounding = 8 * Math.ulp(full.capacityCubicMetres());
    for (int i = 0; i < 100_000; i++) {
      double height = random.nextDouble() * full.maxHeightMetres();
      double difference =
          thinned.table().volumeCubicMetres(height) - full.volumeCubicMetres(height);
      assertTrue(
          Math.abs(difference) <= thinned.greatestErrorCubicMetres() + rounding,
          () -> "difference " + difference + " at " + height + ", seed " + seed);
    }
  }

  @Test
  void reportsTheErrorReachedAndWhere() {
    CapacityTable full = quarters();
    ThinnedTable thinned = TableThinning.toRows(full, 20);

    double at = thinned.atHeightMetres();
    assertTrue(thinned.table().size() <= 20);
    assertEquals(
        thinned.greatestErrorCubicMetres(),
        Math.abs(thinned.table().volumeCubicMetres(at) - full.volumeCubicMetres(at)),
        1e-12);
    assertEquals(
        exactError(full, thinned.table().rows()).doubleValue(),
        thinned.greatestErrorCubicMetres(),
        1e-11);
    assertEquals(
        100 * thinned.greatestErrorCubicMetres() / full.capacityCubicMetres(),
        thinned.greatestErrorPercent(),
        1e-12);
  }

  /** Every choice of rows is tried: none with fewer rows keeps the error. */
  @Test
  void noChoiceHasFewerRowsForAnError() {
    long seed = 20_251;
    Random random = new Random(seed);
    for (int trial = 0; trial < 60; trial++) {
      CapacityTable full = random(random, 3 + random.nextInt(9));
      double error = 1.5 * random.nextDouble();
      int fewest = full.size();
      for (List<CapacityRow> choice : choices(full)) {
        if (exactError(full, choice).compareTo(exact(error - 1e-9)) <= 0) {
          fewest = Math.min(fewest, choice.size());
        }
      }
      int rows = TableThinning.toError(full, error).table().size();
      assertTrue(rows <= fewest, rows + " rows where " + fewest + " do, seed " + seed);
    }
  }

  /** Every choice of rows is tried: none of as many rows has a smaller error. */
  @Test
  void noChoiceHasASmallerErrorForSoManyRows() {
    long seed = 20_252;
    Random random = new Random(seed);
    for (int trial = 0; trial < 60; trial++) {
      CapacityTable full = random(random, 4 + random.nextInt(8));
      int most = 2 + random.nextInt(full.size() - 2);
      double least = Double.POSITIVE_INFINITY;
      for (List<CapacityRow> choice : choices(full)) {
        if (choice.size() <= most) {
          least = Math.min(least, exactError(full, choice).doubleValue());
        }
      }
      ThinnedTable thinned = TableThinning.toRows(full, most);
      assertTrue(thinned.table().size() <= most);
      assertEquals(least, thinned.greatestErrorCubicMetres(), 2e-6 * least + 1e-12, "seed " + seed);
    }
  }

  /** All choices of rows that hold the first and the last. */
  private static List<List<CapacityRow>> choices(CapacityTable full) {
    List<CapacityRow> rows = full.rows();
    int between = rows.size() - 2;
    List<List<CapacityRow>> choices = new ArrayList<>();
    for (int bits = 0; bits < 1 << between; bits++) {
      List<CapacityRow> choice = new ArrayList<>(List.of(rows.get(0)));
      for (int i = 0; i < between; i++) {
        if ((bits >> i & 1) == 1) {
          choice.add(rows.get(i + 1));
        }
      }
      choice.add(rows.get(rows.size() - 1));
      choices.add(choice);
    }
    return choices;
  }

  /** The usual way of dropping points (Ramer 1972, Douglas and Peucker 1973) never needs fewer. */
  @ParameterizedTest
  @ValueSource(doubles = {0.01, 0.1, 1})
  void neverNeedsMoreRowsThanDroppingPointsByHalves(double error) {
    CapacityTable full = longTable();
    List<CapacityRow> rows = full.rows();

    int byHalves = 1 + lines(rows, 0, rows.size() - 1, error);

    assertTrue(TableThinning.toError(full, error).table().size() <= byHalves);
  }

  private static int lines(List<CapacityRow> rows, int from, int to, double error) {
    double slope =
        (rows.get(to).volumeCubicMetres() - rows.get(from).volumeCubicMetres())
            / (rows.get(to).heightMetres() - rows.get(from).heightMetres());
    double greatest = 0;
    int worst = -1;
    for (int i = from + 1; i < to; i++) {
      double step = rows.get(i).heightMetres() - rows.get(from).heightMetres();
      double line = rows.get(from).volumeCubicMetres() + step * slope;
      double off = Math.abs(line - rows.get(i).volumeCubicMetres());
      if (off > greatest) {
        greatest = off;
        worst = i;
      }
    }
    return greatest <= error ? 1 : lines(rows, from, worst, error) + lines(rows, worst, to, error);
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 3, 10, 64, QUARTERS - 1, QUARTERS, QUARTERS + 1, Integer.MAX_VALUE})
  void keepsTheEndRowsAndNeverFalls(int most) {
    CapacityTable full = quarters();

    CapacityTable thin = TableThinning.toRows(full, most).table();

    assertEquals(full.minHeightMetres(), thin.minHeightMetres());
    assertEquals(full.maxHeightMetres(), thin.maxHeightMetres());
    assertEquals(full.heelCubicMetres(), thin.heelCubicMetres());
    assertEquals(full.capacityCubicMetres(), thin.capacityCubicMetres());
    List<CapacityRow> rows = thin.rows();
    for (int i = 1; i < rows.size(); i++) {
      assertTrue(rows.get(i).volumeCubicMetres() >= rows.get(i - 1).volumeCubicMetres());
    }
  }

  @Test
  void leavesAStraightTableTwoRowsAndAKinkThree() {
    CapacityTable straight =
        CapacityTable.read("height [m];volume [m3]\n0;0\n1;2\n2;4\n4;8\n", "s");
    CapacityTable kink = CapacityTable.read("height [m];volume [m3]\n0;0\n1;2\n2;4\n4;6\n", "k");

    assertEquals(2, TableThinning.toRows(straight, 3).table().size());
    assertEquals(3, TableThinning.toError(kink, 1e-6).table().size());
  }

  @Test
  void noErrorAtAllKeepsEveryRow() {
    ThinnedTable thinned = TableThinning.toError(longTable(), 0);

    assertEquals(LONG, thinned.table().size());
    assertEquals(0, thinned.greatestErrorCubicMetres());
  }

  @Test
  void saysWhetherTheKeptRowsWouldPassAsANewTable() {
    assertEquals(List.of(), TableThinning.toRows(quarters(), 32).problemsWhenEnteredAnew());
  }

  @ParameterizedTest
  @ValueSource(
      doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1e-300, -1})
  void refusesAnErrorThatIsNone(double bad) {
    CapacityTable table = StrappingTables.table("A", Interpolation.LINEAR);
    Refusals.assertRefused("TableThinning.greatestError", () -> TableThinning.toError(table, bad));
  }

  @ParameterizedTest
  @ValueSource(ints = {Integer.MIN_VALUE, -1, 0, 1})
  void refusesFewerThanTwoRows(int bad) {
    CapacityTable table = StrappingTables.table("A", Interpolation.LINEAR);
    Refusals.assertRefused("TableThinning.mostRows", () -> TableThinning.toRows(table, bad));
  }

  @Test
  void refusesATableThatIsNotOfStraightLines() {
    CapacityTable curved = StrappingTables.table("A", Interpolation.FRITSCH_CARLSON);

    assertTrue(Refusal.of(() -> TableThinning.toRows(curved, 5)).contains("straight lines"));
    assertTrue(Refusal.of(() -> TableThinning.toError(curved, 1)).contains("straight lines"));
  }
}
