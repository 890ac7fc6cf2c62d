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

class LyingCylinderTest extends VesselContract {

  @Override
  protected Vessel curve() {
    return new LyingCylinder(2.5, 6);
  }

  /** The rows with flat ends; the file also has dished and conical heads. */
  static List<CsvRow> rows() {
    return CsvRows.read(LyingCylinderTest.class, "horizontal_cylinder.csv").stream()
        .filter(row -> row.text("left_head").equals("flat"))
        .filter(row -> row.text("right_head").equals("flat"))
        .toList();
  }

  @Test
  void thirtyThreeRowsAreChecked() {
    assertEquals(33, rows().size());
  }

  @ParameterizedTest
  @MethodSource("rows")
  void agreesWithPublishedAndIntegratedVolumes(CsvRow row) {
    CheckRows.check(row, new LyingCylinder(row.number("diameter_m"), row.number("shell_length_m")));
  }

  @Test
  void halfTheDiameterIsHalfTheVolume() {
    assertEquals(curve().capacityCubicMetres() / 2, curve().volumeCubicMetres(1.25));
    assertEquals(1.25, curve().heightMetres(curve().capacityCubicMetres() / 2));
  }

  /** The filled and the empty part change places when the cylinder is turned over. */
  @Test
  void filledAndEmptyPartsAddUpToTheWhole() {
    for (int i = 0; i <= 1000; i++) {
      double height = 2.5 * i / 1000;
      double sum = curve().volumeCubicMetres(height) + curve().volumeCubicMetres(2.5 - height);
      assertEquals(curve().capacityCubicMetres(), sum, 1e-13 * curve().capacityCubicMetres());
    }
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
    String diameter = Refusal.of(() -> new LyingCylinder(bad, 6));
    assertTrue(diameter.contains("LyingCylinder.diameter = " + bad), diameter);
    String length = Refusal.of(() -> new LyingCylinder(2.5, bad));
    assertTrue(length.contains("LyingCylinder.length = " + bad), length);
  }

  @Test
  void saysWhatItIs() {
    assertEquals("lying cylinder, diameter 2.5 m, 6 m long, flat ends", curve().describe());
  }
}
