package io.strapline.level.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import io.strapline.level.vessel.Rectangle;
import io.strapline.level.vessel.StackedVessel;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Compares heaps and funnels in a rectangular bin with the check file, row by row. */
class HeapRectangleTest {

  static List<CsvRow> rows() {
    return CsvRows.read(HeapRectangleTest.class, "heap_rectangle.csv");
  }

  private static SolidsVessel bin(CsvRow row) {
    Rectangle plan = new Rectangle(row.number("bin_x_m"), row.number("bin_y_m"));
    return SolidsVessel.of(StackedVessel.rectangularBin(plan, 50));
  }

  private static ConeSurface surface(CsvRow row) {
    PlanPoint axis = new PlanPoint(row.number("apex_x_m"), row.number("apex_y_m"));
    PlanPoint gauge = new PlanPoint(row.number("gauge_x_m"), row.number("gauge_y_m"));
    double angle = row.number("angle_deg");
    ConeSurface cone =
        row.text("case").equals("heap")
            ? ConeSurface.heap(axis, 0, angle)
            : ConeSurface.funnel(axis, 0, angle);
    return cone.through(gauge, row.number("h_m"));
  }

  @Test
  void allTenRowsAreChecked() {
    assertEquals(10, rows().size());
  }

  @ParameterizedTest
  @MethodSource("rows")
  void volumeLevelAndPeakAgreeWithTheCheckValues(CsvRow row) {
    ConeSurface surface = surface(row);
    SurfaceContent content = SurfaceContent.of(bin(row), surface);
    double expected = row.number("volume_m3");
    assertEquals(expected, content.volumeCubicMetres(), row.tolerance(expected), row.text("id"));
    assertEquals(
        row.number("equivalent_level_m"), content.equivalentLevelMetres(), 1e-10, row.text("id"));
    assertEquals(row.number("apex_level_m"), surface.apexLevelMetres(), 1e-12, row.text("id"));
  }

  /** The same volume by integrating over the plan, without the four-corner formula. */
  @ParameterizedTest
  @MethodSource("rows")
  void integrationOverThePlanGivesTheSameVolume(CsvRow row) {
    SolidsVessel bin = bin(row);
    ConeSurface surface = surface(row);
    VolumeIntegral.Result result =
        VolumeIntegral.of(bin, surface, Cell.whole(bin.plan(), surface.axis()));
    assertEquals(row.number("volume_m3"), result.cubicMetres(), 1e-9, row.text("id"));
  }
}
