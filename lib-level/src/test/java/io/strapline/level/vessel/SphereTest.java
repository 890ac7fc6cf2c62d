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

class SphereTest extends VesselContract {

  @Override
  protected Vessel curve() {
    return new Sphere(12.5);
  }

  static List<CsvRow> rows() {
    return CsvRows.read(SphereTest.class, "sphere.csv");
  }

  @Test
  void allThirtyFiveRowsAreChecked() {
    assertEquals(35, rows().size());
  }

  @ParameterizedTest
  @MethodSource("rows")
  void agreesWithPublishedAndIntegratedVolumes(CsvRow row) {
    CheckRows.check(row, new Sphere(row.number("diameter_m")));
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
  void refusesAnImpossibleDiameterByName(double bad) {
    String message = Refusal.of(() -> new Sphere(bad));
    assertTrue(message.contains("Sphere.diameter = " + bad), message);
  }

  @Test
  void saysWhatItIs() {
    assertEquals("sphere, diameter 12.5 m", curve().describe());
  }
}
