package io.strapline.level.vessel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import io.strapline.level.testing.Refusal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class RectangularHopperTest extends VesselContract {

  private static final Rectangle BIN = new Rectangle(4, 3);

  @Override
  protected Vessel curve() {
    return StackedVessel.rectangularBinOnHopper(
        new PyramidSection(new Rectangle(1, 0.5), BIN, 2), 5);
  }

  /** All rows but those of the doubly sloped floor, which is no shape between two rectangles. */
  static List<CsvRow> rows() {
    return CsvRows.read(RectangularHopperTest.class, "rectangular_hopper.csv").stream()
        .filter(row -> !row.text("hopper_type").equals("double_inclined_floor"))
        .toList();
  }

  private static Vessel vessel(CsvRow row) {
    Rectangle bin = new Rectangle(row.number("bin_x_m"), row.number("bin_y_m"));
    Rectangle outlet = new Rectangle(row.number("outlet_x_m"), row.number("outlet_y_m"));
    PyramidSection hopper = new PyramidSection(outlet, bin, row.number("hopper_height_m"));
    return StackedVessel.rectangularBinOnHopper(hopper, row.number("bin_height_m"));
  }

  @Test
  void fiftyRowsAreChecked() {
    assertEquals(50, rows().size());
  }

  /** An eccentric outlet changes no volume: its rows are checked by the same vessels. */
  @Test
  void rowsWithAnEccentricOutletAreAmongThem() {
    assertTrue(rows().stream().anyMatch(row -> row.number("outlet_offset_x_m") != 0));
  }

  @ParameterizedTest
  @MethodSource("rows")
  void agreesWithIntegrationAndSolidModels(CsvRow row) {
    CheckRows.check(row, vessel(row));
  }

  @ParameterizedTest
  @ValueSource(
      doubles = {
        Double.NaN,
        Double.POSITIVE_INFINITY,
        Double.NEGATIVE_INFINITY,
        -1,
        9.9e-7,
        10_000.1
      })
  void refusesImpossibleDimensionsByName(double bad) {
    assertTrue(Refusal.of(() -> new Rectangle(bad, 3)).contains("Rectangle.length = " + bad));
    assertTrue(Refusal.of(() -> new Rectangle(4, bad)).contains("Rectangle.width = " + bad));
    assertTrue(
        Refusal.of(() -> new PyramidSection(BIN, BIN, bad))
            .contains("PyramidSection.height = " + bad));
    assertTrue(
        Refusal.of(() -> new PrismSection(BIN, bad)).contains("PrismSection.height = " + bad));
  }

  @Test
  void refusesABodyWithoutVolume() {
    Rectangle point = new Rectangle(0, 0);
    Rectangle edge = new Rectangle(0, 3);
    for (Rectangle top : List.of(point, edge)) {
      String message = Refusal.of(() -> new PyramidSection(edge, top, 2));
      assertTrue(message.contains("PyramidSection.volume = 0.0 m3"), message);
    }
    String flat = Refusal.of(() -> new PrismSection(edge, 2));
    assertTrue(flat.contains("PrismSection.plan = 0.0 m2"), flat);
    assertTrue(Refusal.of(() -> new PrismSection(BIN, 0)).contains("PrismSection.height"));
  }

  @Test
  void saysWhatItIs() {
    assertEquals(
        "rectangular bin 4 m x 3 m, 5 m high, on a hopper 2 m high with outlet 1 m x 0.5 m",
        curve().describe());
    assertEquals(
        "rectangular bin 4 m x 3 m, 5 m high, on a closed hopper 2 m high",
        StackedVessel.rectangularBinOnHopper(new PyramidSection(new Rectangle(0, 3), BIN, 2), 5)
            .describe());
    assertEquals(
        "rectangular bin 4 m x 3 m, 5 m high, flat bottom",
        StackedVessel.rectangularBin(BIN, 5).describe());
  }
}
