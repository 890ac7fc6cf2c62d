package io.strapline.level.vessel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import io.strapline.level.testing.Refusal;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class StackedVesselTest extends VesselContract {

  /** A silo with spout, hopper, shell and roof cone. */
  @Override
  protected StackedVessel curve() {
    return StackedVessel.of(
        List.of(
            new CylinderSection(0.3, 0.3),
            new ConeSection(0.3, 3.6, 2.7),
            new CylinderSection(3.6, 8),
            new ConeSection(3.6, 0.8, 0.9)));
  }

  static List<CsvRow> rows() {
    return CsvRows.read(StackedVesselTest.class, "stacked_profile.csv");
  }

  /** Reads {@code z:r|z:r} or {@code z:x:y|z:x:y}; a repeated z is a step. */
  private static StackedVessel vessel(CsvRow row) {
    String[] points = row.text("profile").split("\\|", -1);
    List<Section> sections = new ArrayList<>();
    for (int i = 1; i < points.length; i++) {
      double[] low = numbers(points[i - 1]);
      double[] high = numbers(points[i]);
      if (high[0] > low[0]) {
        sections.add(section(low, high));
      }
    }
    return StackedVessel.of(sections);
  }

  private static Section section(double[] low, double[] high) {
    double height = high[0] - low[0];
    if (low.length == 2) {
      return new ConeSection(2 * low[1], 2 * high[1], height);
    }
    return new PyramidSection(
        new Rectangle(low[1], low[2]), new Rectangle(high[1], high[2]), height);
  }

  private static double[] numbers(String point) {
    return List.of(point.split(":", -1)).stream().mapToDouble(Double::parseDouble).toArray();
  }

  @Test
  void allFortyRowsAreChecked() {
    assertEquals(40, rows().size());
  }

  @ParameterizedTest
  @MethodSource("rows")
  void agreesWithIntegrationOfTheProfile(CsvRow row) {
    CheckRows.check(row, vessel(row));
  }

  /** Volumes of both sides meet at every joint, also where the width jumps. */
  @ParameterizedTest
  @MethodSource("rows")
  void isContinuousAtEveryJoint(CsvRow row) {
    StackedVessel vessel = vessel(row);
    double joint = 0;
    for (Section section : vessel.sections()) {
      joint += section.heightMetres();
      double below = vessel.volumeCubicMetres(Math.nextDown(joint));
      double above = vessel.volumeCubicMetres(Math.nextUp(joint));
      assertTrue(above >= below, row.text("id"));
      assertEquals(below, above, 1e-13 * vessel.capacityCubicMetres(), row.text("id"));
    }
  }

  @Test
  void refusesAnEmptyStack() {
    String message = Refusal.of(() -> StackedVessel.of(List.of()));
    assertTrue(message.contains("StackedVessel.sections"), message);
  }

  @Test
  void isNotChangedThroughTheListItWasGiven() {
    List<Section> sections = new ArrayList<>(List.of(new CylinderSection(6, 18)));
    StackedVessel vessel = StackedVessel.of(sections);
    sections.clear();
    assertEquals(18, vessel.maxHeightMetres());
    assertThrows(UnsupportedOperationException.class, () -> vessel.sections().clear());
  }

  @Test
  void isEqualToAnotherOfTheSameSections() {
    assertEquals(curve(), curve());
    assertEquals(curve().hashCode(), curve().hashCode());
    assertNotEquals(curve(), StackedVessel.uprightCylinder(3.6, 8));
  }

  @Test
  void listsTheSectionsOfAnUnusualStack() {
    assertEquals(
        "4 sections, bottom to top: cylinder, diameter 0.3 m, 0.3 m high; cone, diameter 0.3 m to"
            + " 3.6 m, 2.7 m high; cylinder, diameter 3.6 m, 8 m high; cone, diameter 3.6 m to"
            + " 0.8 m, 0.9 m high",
        curve().describe());
    assertEquals(curve().describe(), curve().toString());
    assertEquals(
        "2 sections, bottom to top: cone, diameter 0.4 m to 3 m, 2 m high; straight walls 3 m x"
            + " 3 m, 5 m high",
        StackedVessel.of(
                List.of(new ConeSection(0.4, 3, 2), new PrismSection(new Rectangle(3, 3), 5)))
            .describe());
  }
}
