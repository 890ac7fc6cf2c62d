package io.strapline.level.vessel;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import io.strapline.level.testing.Refusals;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class SlopedFloorTest extends VesselContract {

  private static final Rectangle PLAN = new Rectangle(3, 2);

  @Override
  protected Vessel curve() {
    return vessel(1.5, 0.8);
  }

  private static StackedVessel vessel(double along, double across) {
    return StackedVessel.rectangularBinOnSlopedFloor(
        new SlopedFloorSection(PLAN, along, across), 4);
  }

  static List<CsvRow> rows() {
    return CsvRows.read(SlopedFloorTest.class, "rectangular_hopper.csv").stream()
        .filter(row -> row.text("hopper_type").equals("double_inclined_floor"))
        .toList();
  }

  @Test
  void sixRowsAreChecked() {
    assertEquals(6, rows().size());
  }

  @ParameterizedTest
  @MethodSource("rows")
  void agreesWithIntegrationAndSolidModels(CsvRow row) {
    Rectangle plan = new Rectangle(row.number("bin_x_m"), row.number("bin_y_m"));
    SlopedFloorSection floor =
        new SlopedFloorSection(plan, row.number("rise_x_m"), row.number("rise_y_m"));
    CheckRows.check(
        row, StackedVessel.rectangularBinOnSlopedFloor(floor, row.number("bin_height_m")));
  }

  /** A floor that slopes one way is a wedge; which side it is does not matter. */
  @Test
  void oneSlopeIsAWedge() {
    PyramidSection wedge = new PyramidSection(new Rectangle(0, 2), PLAN, 1.5);
    SlopedFloorSection along = new SlopedFloorSection(PLAN, 1.5, 0);
    SlopedFloorSection across = new SlopedFloorSection(PLAN, 0, 1.5);
    for (double z : new double[] {1e-5, 0.1, 0.9, 1.5}) {
      double expected = wedge.volumeBelow(z);
      assertEquals(expected, along.volumeBelow(z), 2e-13 * expected);
      assertEquals(expected, across.volumeBelow(z), 2e-13 * expected);
    }
  }

  /** Turned over, the empty part of the floor's section is the filled part. */
  @Test
  void filledAndEmptyPartsAddUp() {
    SlopedFloorSection floor = new SlopedFloorSection(PLAN, 1.5, 0.8);
    for (int i = 0; i <= 1000; i++) {
      double z = 2.3 * i / 1000;
      assertEquals(
          6 * z - 6 * 1.15, floor.volumeBelow(z) - floor.volumeBelow(2.3 - z), 1e-12, "at " + z);
      assertEquals(6, floor.areaAt(z) + floor.areaAt(2.3 - z), 1e-12, "at " + z);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1, 9.9e-7, 10_000.1})
  void refusesImpossibleRises(double bad) {
    Refusals.assertRefused(
        "SlopedFloorSection.riseAlongLength", () -> new SlopedFloorSection(PLAN, bad, 1));
    Refusals.assertRefused(
        "SlopedFloorSection.riseAlongWidth", () -> new SlopedFloorSection(PLAN, 1, bad));
  }

  @Test
  void refusesAFloorThatIsFlatOrHasNoPlan() {
    Refusals.assertRefused(
        "SlopedFloorSection.riseAlongWidth", () -> new SlopedFloorSection(PLAN, 0, 0));
    Rectangle line = new Rectangle(0, 2);
    Refusals.assertRefused("SlopedFloorSection.plan", () -> new SlopedFloorSection(line, 1, 1));
  }

  @Test
  void saysWhatItIs() {
    assertEquals(
        "2 sections, bottom to top: sloped floor 3 m x 2 m, rising 1.5 m along and 0.8 m across;"
            + " straight walls 3 m x 2 m, 4 m high",
        curve().describe());
  }

  @Nested
  class OneWay extends VesselContract {
    @Override
    protected Vessel curve() {
      return vessel(0, 1.2);
    }
  }

  @Nested
  class HardlyTheOtherWay extends VesselContract {
    @Override
    protected Vessel curve() {
      return vessel(1e-5, 1.2);
    }
  }
}
