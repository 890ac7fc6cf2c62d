package io.strapline.level.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.Refusals;
import io.strapline.level.vessel.CapacityCurve;
import io.strapline.level.vessel.LyingCylinder;
import io.strapline.level.vessel.StackedVessel;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CurveComparisonTest {

  private static CapacityTable table(String rows) {
    return CapacityTable.read("height [m];volume [m3]\n" + rows, "table");
  }

  /** By hand: the second lies 0.5 m3 above at 1 m and 0.25 m3 below at 3 m. */
  @Test
  void findsBothExtremesOfTwoTablesExactly() {
    CapacityTable first = table("0;0\n1;2\n2;4\n3;6\n4;8\n");
    CapacityTable second = table("0;0\n1;2.5\n2;4\n3;5.75\n4;8\n");

    CurveComparison comparison = CurveComparison.of(first, second, 0.2);

    assertEquals(1, comparison.greatestUp().heightMetres());
    assertEquals(0.5, comparison.greatestUp().cubicMetres());
    assertEquals(6.25, comparison.percent(comparison.greatestUp()));
    assertEquals(3, comparison.greatestDown().heightMetres());
    assertEquals(-0.25, comparison.greatestDown().cubicMetres());
    assertEquals(0, comparison.unseenCubicMetres());
    assertFalse(comparison.agree());
  }

  /** The lines cross 0.2 m3 at 0.4 and 1.6 m going up and down, and -0.2 at 2.8 and 3.2 m. */
  @Test
  void listsTheRangesBeyondTheLimit() {
    CapacityTable first = table("0;0\n1;2\n2;4\n3;6\n4;8\n");
    CapacityTable second = table("0;0\n1;2.5\n2;4\n3;5.75\n4;8\n");

    List<DifferenceRange> ranges = CurveComparison.of(first, second, 0.2).beyond();

    assertEquals(2, ranges.size());
    assertEquals(0.4, ranges.get(0).fromMetres(), 1e-9);
    assertEquals(1.6, ranges.get(0).toMetres(), 1e-9);
    assertEquals(0.5, ranges.get(0).greatest().cubicMetres());
    assertEquals(2.8, ranges.get(1).fromMetres(), 1e-9);
    assertEquals(3.2, ranges.get(1).toMetres(), 1e-9);
    assertEquals(-0.25, ranges.get(1).greatest().cubicMetres());
  }

  /**
   * A table of a lying cylinder with rows at bottom, middle and top lies highest above it where the
   * slopes agree: 2 sqrt(R^2 - y^2) = pi R / 2, y from the axis (by calculus).
   */
  @Test
  void findsWhereAChordLeavesALyingTank() {
    LyingCylinder tank = new LyingCylinder(2, 5);
    double half = Math.PI / 2 * 5;
    CapacityTable chord =
        CapacityTable.of(
            "chord",
            List.of(
                new CapacityRow(1, 0, 0),
                new CapacityRow(2, 1, half),
                new CapacityRow(3, 2, 2 * half)),
            Interpolation.LINEAR);

    CurveComparison comparison = CurveComparison.of(tank, chord, 1);

    double y = Math.sqrt(1 - Math.PI * Math.PI / 16);
    assertEquals(1 - y, comparison.greatestUp().heightMetres(), 1e-6);
    assertEquals(1 + y, comparison.greatestDown().heightMetres(), 1e-6);
    double segment = 5 * (Math.acos(y) - y * Math.sqrt(1 - y * y));
    assertEquals(half * (1 - y) - segment, comparison.greatestUp().cubicMetres(), 1e-12);
    assertEquals(
        -comparison.greatestUp().cubicMetres(), comparison.greatestDown().cubicMetres(), 1e-9);
  }

  /** Thinning reports its own error; the comparison must find the same. */
  @Test
  void agreesWithTheErrorThatThinningReports() {
    CapacityTable full = StrappingTables.table("A", Interpolation.LINEAR);
    ThinnedTable thinned = TableThinning.toRows(full, 6);

    CurveComparison comparison = CurveComparison.of(full, thinned.table(), 0);

    double greatest =
        Math.max(comparison.greatestUp().cubicMetres(), -comparison.greatestDown().cubicMetres());
    assertEquals(thinned.greatestErrorCubicMetres(), greatest, 1e-13);
  }

  @Test
  void noHeightTriedAtRandomDiffersByMoreThanStated() {
    CapacityCurve shape = new LyingCylinder(2, 5);
    CapacityTable table = StrappingTables.table("A", Interpolation.FRITSCH_CARLSON);
    CurveComparison comparison = CurveComparison.of(shape, table, 0.01);
    long seed = 5;
    Random random = new Random(seed);
    for (int i = 0; i < 50_000; i++) {
      double height = 2 * random.nextDouble();
      double difference = table.volumeCubicMetres(height) - shape.volumeCubicMetres(height);
      double unseen = comparison.unseenCubicMetres();
      assertTrue(
          difference <= comparison.greatestUp().cubicMetres() + unseen
              && difference >= comparison.greatestDown().cubicMetres() - unseen,
          "at " + height + ", seed " + seed);
      boolean listed =
          comparison.beyond().stream()
              .anyMatch(r -> height >= r.fromMetres() && height <= r.toMetres());
      assertTrue(listed || Math.abs(difference) <= 0.01 + unseen, "at " + height);
    }
    assertTrue(comparison.unseenCubicMetres() < 1e-3 * shape.capacityCubicMetres());
  }

  @Test
  void aCurveAgreesWithItself() {
    CapacityTable table = StrappingTables.table("C", Interpolation.LINEAR);
    CurveComparison comparison = CurveComparison.of(table, table, 0);

    assertTrue(comparison.agree());
    assertEquals(0, comparison.greatestUp().cubicMetres());
    assertEquals(0, comparison.greatestDown().cubicMetres());
    assertEquals(List.of(), comparison.beyond());
  }

  @Test
  void comparesOnlyTheHeightsThatBothCover() {
    CapacityTable heel = table("1;10\n3;30\n");
    CapacityCurve tank = StackedVessel.uprightCylinder(3.5, 2.5);

    CurveComparison.Scope scope = CurveComparison.of(heel, tank, 1).scope();

    assertEquals(1, scope.fromMetres());
    assertEquals(2.5, scope.toMetres());
    assertEquals(30, scope.capacityCubicMetres());
  }

  @Test
  void aDifferenceAllTheWayIsOneRange() {
    CurveComparison comparison = CurveComparison.of(table("0;0\n2;4\n"), table("0;1\n2;5\n"), 0.5);

    assertEquals(1, comparison.beyond().size());
    assertEquals(0, comparison.beyond().get(0).fromMetres());
    assertEquals(2, comparison.beyond().get(0).toMetres());
    assertTrue(comparison.text().contains("+1.0000 m3 (+25.000 % of capacity)"));
    assertTrue(comparison.text().contains("  0.0000 to 2.0000 m, most"));
  }

  @Test
  void refusesCurvesWithoutACommonHeight() {
    Refusals.assertRefused(
        "CurveComparison.heights",
        () -> CurveComparison.of(table("0;0\n1;1\n"), table("1;0\n2;1\n"), 0));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1e-9})
  void refusesALimitThatIsNone(double bad) {
    CapacityTable table = StrappingTables.table("A", Interpolation.LINEAR);
    Refusals.assertRefused("CurveComparison.limit", () -> CurveComparison.of(table, table, bad));
  }
}
