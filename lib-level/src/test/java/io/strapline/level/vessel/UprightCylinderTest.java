package io.strapline.level.vessel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import io.strapline.level.testing.Refusal;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class UprightCylinderTest extends VesselContract {

  @Override
  protected Vessel curve() {
    return StackedVessel.uprightCylinder(6, 18);
  }

  /** The rows whose heads are flat or conical; the file also has dished heads. */
  static List<CsvRow> rows() {
    List<String> known = List.of("flat", "cone");
    return CsvRows.read(UprightCylinderTest.class, "vertical_cylinder.csv").stream()
        .filter(row -> known.contains(row.text("bottom_head")))
        .filter(row -> known.contains(row.text("top_head")))
        .toList();
  }

  private static Vessel vessel(CsvRow row) {
    double diameter = row.number("diameter_m");
    List<Section> sections = new ArrayList<>();
    if (row.text("bottom_head").equals("cone")) {
      sections.add(new ConeSection(0, diameter, row.number("bottom_depth_m")));
    }
    sections.add(new CylinderSection(diameter, row.number("shell_length_m")));
    if (row.text("top_head").equals("cone")) {
      sections.add(new ConeSection(diameter, 0, row.number("top_depth_m")));
    }
    return StackedVessel.of(sections);
  }

  @Test
  void twentyNineRowsAreChecked() {
    assertEquals(29, rows().size());
  }

  @ParameterizedTest
  @MethodSource("rows")
  void agreesWithTheReferenceLibrary(CsvRow row) {
    CheckRows.check(row, vessel(row));
  }

  @ParameterizedTest
  @ValueSource(
      doubles = {
        Double.NaN,
        Double.POSITIVE_INFINITY,
        Double.NEGATIVE_INFINITY,
        -1,
        0,
        9.9e-7,
        10_000.1
      })
  void refusesImpossibleDimensionsByName(double bad) {
    String diameter = Refusal.of(() -> StackedVessel.uprightCylinder(bad, 18));
    assertTrue(diameter.contains("CylinderSection.diameter = " + bad), diameter);
    assertTrue(diameter.contains("give the inside dimension in metres"), diameter);
    String height = Refusal.of(() -> StackedVessel.uprightCylinder(6, bad));
    assertTrue(height.contains("CylinderSection.height = " + bad), height);
  }

  @Test
  void takesTheLimitsThemselves() {
    assertEquals(
        Math.PI / 4 * 1e-18,
        StackedVessel.uprightCylinder(1e-6, 1e-6).capacityCubicMetres(),
        1e-33);
    assertEquals(
        Math.PI / 4 * 1e12, StackedVessel.uprightCylinder(1e4, 1e4).capacityCubicMetres(), 1e-3);
  }

  @Test
  void saysWhatItIs() {
    assertEquals("upright cylinder, diameter 6 m, 18 m high, flat bottom", curve().describe());
  }
}
