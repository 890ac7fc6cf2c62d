package io.strapline.level.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import io.strapline.level.vessel.StackedVessel;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Compares heaps, funnels and craters in a round silo with the check file, row by row. */
class HeapCylinderTest {

  static List<CsvRow> rows() {
    return CsvRows.read(HeapCylinderTest.class, "heap_cylinder.csv");
  }

  /** Tall enough that no surface of the file reaches its top. */
  private static SolidsVessel silo(CsvRow row) {
    return SolidsVessel.of(StackedVessel.uprightCylinder(2 * row.number("radius_m"), 100));
  }

  private static PlanPoint gauge(CsvRow row) {
    return PlanPoint.polar(row.number("gauge_r_m"), row.number("gauge_azimuth_deg"));
  }

  /** Draws the cone through the level at the gauge, as a transmitter does. */
  private static Surface surface(CsvRow row) {
    PlanPoint axis = new PlanPoint(row.number("apex_offset_m"), 0);
    double angle = row.number("angle_deg");
    double level = row.number("h_m");
    return switch (row.text("case")) {
      case "drawdown" -> ConeSurface.funnel(axis, 0, angle).through(gauge(row), level);
      case "heap_with_crater" ->
          crater(row, ConeSurface.heap(axis, row.number("apex_level_m"), angle));
      default -> ConeSurface.heap(axis, 0, angle).through(gauge(row), level);
    };
  }

  private static CraterSurface crater(CsvRow row, ConeSurface heap) {
    PlanPoint draw = new PlanPoint(row.number("draw_offset_m"), 0);
    double bottom = row.number("draw_apex_level_m");
    return new CraterSurface(heap, ConeSurface.funnel(draw, bottom, row.number("draw_angle_deg")));
  }

  @Test
  void allSixtySixRowsAreChecked() {
    assertEquals(66, rows().size());
  }

  @ParameterizedTest
  @MethodSource("rows")
  void volumeAgreesWithTheCheckValue(CsvRow row) {
    SolidsVessel silo = silo(row);
    SurfaceContent content = SurfaceContent.of(silo, surface(row));
    double flat = silo.curve().volumeCubicMetres(row.number("h_m"));
    double volume = content.volumeCubicMetres();
    double got = row.text("compare").equals("delta_volume_m3") ? volume - flat : volume;
    double expected = row.number(row.text("compare"));
    assertEquals(expected, got, row.tolerance(expected), row.text("id"));
    assertTrue(content.errorCubicMetres() <= 1e-7 * volume, () -> "error of " + content);
  }

  /** Published rows print rounded volumes, so their own tolerance goes for the level. */
  @ParameterizedTest
  @MethodSource("rows")
  void equivalentLevelAgreesWithTheCheckValue(CsvRow row) {
    SurfaceContent content = SurfaceContent.of(silo(row), surface(row));
    double expected = row.number("equivalent_level_m");
    assertEquals(
        expected,
        content.equivalentLevelMetres(),
        Math.max(row.number("rel_tol"), 1e-10) * expected,
        row.text("id"));
  }

  @ParameterizedTest
  @MethodSource("rows")
  void theConeMeetsTheWallWhereTheCheckFileSays(CsvRow row) {
    SolidsVessel silo = silo(row);
    Surface surface = surface(row);
    double r = row.number("radius_m");
    double near = Math.max(surface.heightMetres(new PlanPoint(r, 0)), 0);
    double far = Math.max(surface.heightMetres(new PlanPoint(-r, 0)), 0);
    assertEquals(row.number("wall_level_min_m"), Math.min(near, far), 1e-9, row.text("id"));
    assertEquals(row.number("wall_level_max_m"), Math.max(near, far), 1e-9, row.text("id"));
    assertEquals(row.number("wall_level_min_m") == 0, baresFloor(silo, surface), row.text("id"));
  }

  private static boolean baresFloor(SolidsVessel silo, Surface surface) {
    return SurfaceContent.of(silo, surface).baresFloor();
  }
}
